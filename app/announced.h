// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QQuickItem>
#include <QString>

namespace truehang {

/// Stands in an item that shows words, and has a screen reader say that item's name as soon as the words come or
/// change, wherever the reader is: an alert. Takes no room. Words that were there before `live` held aren't said.
class Announced : public QQuickItem {
    Q_OBJECT
    Q_PROPERTY(QString words READ words WRITE setWords NOTIFY wordsChanged)
    Q_PROPERTY(bool live MEMBER live_ NOTIFY liveChanged)

public:
    explicit Announced(QQuickItem* parent = nullptr) : QQuickItem(parent) {}

    [[nodiscard]] QString words() const { return words_; }
    void setWords(const QString& words);
    /// Has the words said even where they are the same as before.
    Q_INVOKABLE void say(const QString& words);

signals:
    void wordsChanged();
    void liveChanged();

protected:
    void componentComplete() override;

private:
    void post();

    QString words_;
    bool live_ = true;
    bool posted_ = false;
};

}  // namespace truehang
