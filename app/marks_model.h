// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "survey/survey.h"

#include <QObject>
#include <QPointF>
#include <QSizeF>

namespace truehang {

class OpenVisit;

/// The marks over one photo of the open window. The picture itself is never changed. Each mark drawn, changed or
/// removed is one edit, undone as one.
class MarksModel : public QObject {
    Q_OBJECT
    /// The photo whose marks are drawn; empty: none.
    Q_PROPERTY(QString photo READ photo NOTIFY changed)
    /// Roles: `number` (key, from 1), `kind`, `says` ("Arrow: valve stands out 60").
    Q_PROPERTY(truehang::ShownRows* marks READ marks CONSTANT)
    /// What a finger draws: `arrow`, `line`, `text`, `station`; `choose`: it chooses a mark.
    Q_PROPERTY(QString tool READ tool WRITE setTool NOTIFY changed)
    /// The words that the next mark gets, or those of the chosen one.
    Q_PROPERTY(QString words READ words NOTIFY changed)
    /// The stations of this window, to name one. Roles: `word` (key), `says`. The chosen one's word.
    Q_PROPERTY(truehang::ShownRows* stations READ stations CONSTANT)
    Q_PROPERTY(QString station READ station WRITE setStation NOTIFY changed)
    /// The chosen mark's number; 0: none.
    Q_PROPERTY(int chosen READ chosen NOTIFY changed)
    /// Why the last touch drew nothing ("Write the words first."); empty where it did.
    Q_PROPERTY(QString fault READ fault NOTIFY changed)

public:
    explicit MarksModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] QString photo() const { return photo_; }
    [[nodiscard]] ShownRows* marks() { return &marks_; }
    [[nodiscard]] ShownRows* stations() { return &stations_; }
    [[nodiscard]] QString tool() const { return tool_; }
    void setTool(const QString& tool);
    [[nodiscard]] QString words() const;
    [[nodiscard]] QString station() const { return station_; }
    void setStation(const QString& word);
    [[nodiscard]] int chosen() const { return chosen_; }
    [[nodiscard]] QString fault() const { return fault_; }

    Q_INVOKABLE void openPhoto(const QString& sha256);
    Q_INVOKABLE void close();
    /// Draws an arrow or a line between two points, fractions of the picture; one that is shorter than a finger's
    /// tremble isn't drawn.
    Q_INVOKABLE void draw(QPointF from, QPointF to);
    /// Puts the words or the station's name at a point, or chooses the mark that is near it on a picture shown so
    /// large.
    Q_INVOKABLE void touch(QPointF at, QSizeF shown);
    Q_INVOKABLE void choose(int number);
    /// The chosen mark further on, by fractions of the picture.
    Q_INVOKABLE void move(QPointF by);
    /// Each keystroke of the words, kept as a draft.
    Q_INVOKABLE void typingWords(const QString& words);
    /// The words are written: of the chosen mark one edit; else they wait for the next mark.
    Q_INVOKABLE void writeWords(const QString& words);
    /// Takes the chosen mark away; undo brings it back.
    Q_INVOKABLE void remove();

    /// The marks as they are kept; empty where the photo isn't there.
    [[nodiscard]] const std::vector<Mark>& kept() const;
    [[nodiscard]] Shape shape() const;

signals:
    void changed();

private:
    void show();
    void add(Mark mark);
    void setFault(const QString& fault);
    [[nodiscard]] QString place() const;

    OpenVisit& open_;
    ShownRows marks_;
    ShownRows stations_;
    QString photo_;
    QString tool_ = QStringLiteral("arrow");
    QString station_;
    QString fault_;
    int chosen_ = 0;
};

}  // namespace truehang
