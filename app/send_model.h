// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "store/store.h"
#include "thread_mark.h"

#include <QObject>
#include <QTimer>
#include <QUrl>
#include <memory>

namespace truehang {

class OpenVisit;
class SurveyKeeping;
class Sending;
struct Devices;

/// Sending to the workroom: who it is, what has arrived, item by item, and why something waits. No network is a quiet
/// state: it waits and goes on by itself.
class SendModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(bool paired READ paired NOTIFY changed)
    /// "Workroom at 192.0.2.7:8080", or empty.
    Q_PROPERTY(QString workroom READ workroom NOTIFY changed)
    /// The address as typed, kept for the next try.
    Q_PROPERTY(QString address READ address NOTIFY changed)
    /// The code that came with a pairing text; empty else.
    Q_PROPERTY(QString code READ code NOTIFY changed)
    /// That a pairing text named the workroom's certificate, and how its digest begins; empty else.
    Q_PROPERTY(QString pinLine READ pinLine NOTIFY changed)
    /// A picture is being looked through for the workroom's code.
    Q_PROPERTY(bool looking READ looking NOTIFY changed)
    /// As `PhotosModel::cameraSource`, to photograph the code.
    Q_PROPERTY(QUrl cameraSource READ cameraSource CONSTANT)
    /// A pairing is under way.
    Q_PROPERTY(bool pairing READ pairing NOTIFY changed)
    /// Why pairing failed, or nothing could be read from a picture; empty else.
    Q_PROPERTY(QString pairFault READ pairFault NOTIFY changed)
    /// How it stands: "All there", "No network. It goes when there is one.", "3 of 5 photos there".
    Q_PROPERTY(QString line READ line NOTIFY changed)
    Q_PROPERTY(truehang::thread_mark::Mark mark READ mark NOTIFY changed)
    /// What goes to the workroom from the open visit. Roles: `item` (key), `title` ("Survey, revision 3", a photo's
    /// caption), `state` ("at the workroom", "on its way, 1.2 of 3.4 MB", "refused: too large"), `mark` (ThreadMark),
    /// `spoken`.
    Q_PROPERTY(truehang::ShownRows* items READ items CONSTANT)
    /// Something of the visit stands on this phone alone: offer it as a file.
    Q_PROPERTY(bool offersFile READ offersFile NOTIFY changed)
    /// What came of the last file: where it stands, or why not.
    Q_PROPERTY(QString fileLine READ fileLine NOTIFY changed)

public:
    SendModel(OpenVisit& open, SurveyKeeping& keeping, Devices& devices, QObject* parent = nullptr);
    /// A visit came here from elsewhere: what the workroom asked about it before is asked for.
    void visitCame();
    /// Reads the pairing and goes on sending; to be called once the store is open.
    void begin();
    ~SendModel() override;

    [[nodiscard]] bool paired() const;
    [[nodiscard]] QString workroom() const;
    [[nodiscard]] QString address() const;
    [[nodiscard]] QString code() const { return told_.code; }
    [[nodiscard]] QString pinLine() const;
    [[nodiscard]] bool looking() const { return looking_; }
    [[nodiscard]] QUrl cameraSource() const;
    [[nodiscard]] bool pairing() const;
    [[nodiscard]] QString pairFault() const;
    [[nodiscard]] QString line() const;
    [[nodiscard]] thread_mark::Mark mark() const;
    [[nodiscard]] ShownRows* items() { return &items_; }
    [[nodiscard]] bool offersFile() const;
    [[nodiscard]] QString fileLine() const;

    /// Takes a workroom's pairing text ("truehang:pair?…") apart into `address`, `code` and the certificate it names.
    /// False for any other words, which forget what an earlier text named but for its own address.
    Q_INVOKABLE bool takePairingText(const QString& words);
    /// Takes the pairing text from the picture code in a picture file, which may be a photo of the workroom's page, and
    /// says `tookPairingText`; else `pairFault` says what to do. The picture comes into no visit.
    Q_INVOKABLE void takePairingPicture(const QUrl& file);
    /// Pairs with the workroom at `address` ("192.0.2.7:8080" or a whole http(s) URL) by its one-time code; or by a
    /// pairing text in place of the address.
    Q_INVOKABLE void pair(const QString& address, const QString& code);
    /// Forgets the workroom; what was sent stays sent.
    Q_INVOKABLE void forgetWorkroom();
    /// Puts the open visit in the outbox and tries now.
    Q_INVOKABLE void sendNow();
    /// Tries an item again that the workroom refused.
    Q_INVOKABLE void sendAgain(const QString& item);
    /// Writes the open visit as a survey document; an empty url takes the documents folder.
    Q_INVOKABLE void saveAsFile(const QUrl& file);
    /// Hands the last file written to the system's own sharing; false where there is none.
    Q_INVOKABLE bool shareFile();

signals:
    void changed();
    /// `address` and `code` are from a pairing text that a picture held.
    void tookPairingText();
    /// The workroom confirmed something, or an item's state changed.
    void arrived(const QString& surveyId);
    /// What somebody else sent of a visit is in it now; empty: a photo that some visit names.
    void came(const QString& surveyId);
    /// What the workroom asked, or what was answered, came in.
    void questionsCame();
    /// The workroom gave its house rules.
    void rulesCame(const QByteArray& document);

private:
    void show();
    void showItems();
    [[nodiscard]] QString itemTitle(const OutboxItem& item) const;
    void takeFirstPairingText(const QStringList& codes);

    OpenVisit& open_;
    SurveyKeeping& keeping_;
    Devices& devices_;
    std::unique_ptr<Sending> sending_;
    ShownRows items_;
    QString address_;
    /// What a pairing text told.
    struct Told {
        QString address, code, pin;
    };
    Told told_;
    QString pair_fault_;
    QString file_line_;
    QUrl written_;
    QTimer quiet_;
    bool looking_ = false;
    bool pairing_ = false;
    std::vector<OutboxItem> stored_;
};

}  // namespace truehang
