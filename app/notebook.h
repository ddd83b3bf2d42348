// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "agreement_model.h"
#include "choices_model.h"
#include "client_model.h"
#include "fabrics_model.h"
#include "figures_model.h"
#include "hanging_model.h"
#include "leaving_model.h"
#include "lists_model.h"
#include "obstructions_model.h"
#include "open_visit.h"
#include "outlook_model.h"
#include "photos_model.h"
#include "position_model.h"
#include "questions_model.h"
#include "room_light.h"
#include "rules_model.h"
#include "send_model.h"
#include "settings.h"
#include "sheets_model.h"
#include "shown_rows.h"
#include "taken_twice_model.h"
#include "visit_file_model.h"
#include "visit_model.h"
#include "walk_aloud.h"
#include "walk_model.h"

#include <QObject>
#include <memory>

namespace truehang {

struct Devices;
class SurveyKeeping;

/// The whole program as QML sees it: the visits, the one that is open with its view models, and where the person is.
/// `screen` is kept: started again, the program stands where it was, with the half-typed text in place.
class Notebook : public QObject {
    Q_OBJECT
    /// Roles: `visitId` (key), `title`, `line` (address or number of windows), `state` (words), `mark`
    /// (ThreadMark), `asks` (true: bold), `spoken`, `heading` (the day, on the last row of each; else empty), `unsent`,
    /// `waits`. Newest day first, within a day the newest edit; rows come in pages as a view asks for them.
    Q_PROPERTY(truehang::ShownRows* visits READ visits CONSTANT)
    /// Visits that were removed and can be brought back. Roles as `visits`.
    Q_PROPERTY(truehang::ShownRows* removedVisits READ removedVisits CONSTANT)
    /// What emptying the bin asks first; empty where there is nothing in it.
    Q_PROPERTY(QString binQuestion READ binQuestion NOTIFY binChanged)
    /// What the list is narrowed to: words in title, client or address; empty shows all.
    Q_PROPERTY(QString search READ search WRITE setSearch NOTIFY searchChanged)
    /// The states that the list can be narrowed to. Roles: `word` (key), `says`, `chosen`.
    Q_PROPERTY(truehang::ShownRows* states READ states CONSTANT)
    /// The word of the state that it is narrowed to; empty shows all.
    Q_PROPERTY(QString narrowed READ narrowed WRITE setNarrowed NOTIFY searchChanged)

    /// `visits`, `visit`, `fabrics`, `walk`, `obstructions`, `hanging`, `figures`, `choices`, `client`, `photos`,
    /// `outlook`, `send`, `sheets`, `file`, `rules`, `leaving`, `twice`, `questions`, `lists` or `settings`.
    Q_PROPERTY(QString screen READ screen WRITE setScreen NOTIFY screenChanged)
    /// False until the store is open and the place restored: show paper only.
    Q_PROPERTY(bool ready READ ready NOTIFY readyChanged)
    /// A store that can't be opened or written: a sentence that says what to do; empty: all is well.
    Q_PROPERTY(QString fault READ fault NOTIFY faultChanged)

    Q_PROPERTY(truehang::OpenVisit* open READ open CONSTANT)
    Q_PROPERTY(truehang::VisitModel* visit READ visit CONSTANT)
    Q_PROPERTY(truehang::FabricsModel* fabrics READ fabrics CONSTANT)
    Q_PROPERTY(truehang::WalkModel* walk READ walk CONSTANT)
    Q_PROPERTY(truehang::WalkAloud* aloud READ aloud CONSTANT)
    Q_PROPERTY(truehang::ObstructionsModel* obstructions READ obstructions CONSTANT)
    Q_PROPERTY(truehang::HangingModel* hanging READ hanging CONSTANT)
    Q_PROPERTY(truehang::FiguresModel* figures READ figures CONSTANT)
    Q_PROPERTY(truehang::OutlookModel* outlook READ outlook CONSTANT)
    Q_PROPERTY(truehang::ChoicesModel* choices READ choices CONSTANT)
    Q_PROPERTY(truehang::ClientModel* client READ client CONSTANT)
    Q_PROPERTY(truehang::AgreementModel* agreement READ agreement CONSTANT)
    Q_PROPERTY(truehang::PhotosModel* photos READ photos CONSTANT)
    Q_PROPERTY(truehang::ListsModel* lists READ lists CONSTANT)
    Q_PROPERTY(truehang::SendModel* send READ send CONSTANT)
    Q_PROPERTY(truehang::SheetsModel* sheets READ sheets CONSTANT)
    Q_PROPERTY(truehang::LeavingModel* leaving READ leaving CONSTANT)
    Q_PROPERTY(truehang::TakenTwiceModel* twice READ twice CONSTANT)
    Q_PROPERTY(truehang::QuestionsModel* questions READ questions CONSTANT)
    Q_PROPERTY(truehang::VisitFileModel* visitFile READ visitFile CONSTANT)
    Q_PROPERTY(truehang::RulesModel* rules READ rules CONSTANT)
    Q_PROPERTY(truehang::PositionModel* position READ position CONSTANT)
    Q_PROPERTY(truehang::RoomLight* light READ light CONSTANT)
    Q_PROPERTY(truehang::Settings* settings READ settings CONSTANT)

public:
    /// `devices` and `keeping` must outlive it.
    Notebook(SurveyKeeping& keeping, Devices& devices, const QString& settingsFile, QObject* parent = nullptr);
    ~Notebook() override;

    [[nodiscard]] ShownRows* visits();
    [[nodiscard]] ShownRows* removedVisits();
    [[nodiscard]] QString search() const;
    void setSearch(const QString& words);
    [[nodiscard]] ShownRows* states();
    [[nodiscard]] QString narrowed() const;
    void setNarrowed(const QString& word);
    [[nodiscard]] QString screen() const;
    void setScreen(const QString& screen);
    [[nodiscard]] bool ready() const;
    [[nodiscard]] QString fault() const;
    [[nodiscard]] OpenVisit* open();
    [[nodiscard]] VisitModel* visit();
    [[nodiscard]] FabricsModel* fabrics();
    [[nodiscard]] WalkModel* walk();
    [[nodiscard]] WalkAloud* aloud();
    [[nodiscard]] ObstructionsModel* obstructions();
    [[nodiscard]] HangingModel* hanging();
    [[nodiscard]] FiguresModel* figures();
    [[nodiscard]] OutlookModel* outlook();
    [[nodiscard]] ChoicesModel* choices();
    [[nodiscard]] ClientModel* client();
    [[nodiscard]] AgreementModel* agreement();
    [[nodiscard]] PhotosModel* photos();
    [[nodiscard]] ListsModel* lists();
    [[nodiscard]] SendModel* send();
    [[nodiscard]] SheetsModel* sheets();
    [[nodiscard]] LeavingModel* leaving();
    [[nodiscard]] TakenTwiceModel* twice();
    [[nodiscard]] QuestionsModel* questions();
    [[nodiscard]] QString binQuestion() const;
    [[nodiscard]] VisitFileModel* visitFile();
    [[nodiscard]] RulesModel* rules();
    [[nodiscard]] PositionModel* position();
    [[nodiscard]] RoomLight* light();
    [[nodiscard]] Settings* settings();

    /// Makes a visit, by the workroom’s house rules where they are known, and opens it; the screen becomes `visit`.
    Q_INVOKABLE void newVisit();
    /// Opens a visit; the screen becomes `visit`.
    Q_INVOKABLE void openVisit(const QString& visitId);
    /// Opens a window of the open visit; the screen becomes `walk`, at the first station without a reading.
    Q_INVOKABLE void openWindow(const QString& windowId);
    /// The window after the open one; where it was the last, what comes next of the visit.
    Q_INVOKABLE void openNextWindow();
    /// What comes next of the visit, as `VisitModel.nextStep` says it.
    Q_INVOKABLE void takeNext();
    /// Agreeing and signing, on the visit’s own page.
    Q_INVOKABLE void agree();
    /// One screen up: choices and what the client is shown to the figures, other window screens to the visit, the visit
    /// to the visits. False where there is none.
    Q_INVOKABLE bool goBack();
    Q_INVOKABLE void removeVisit(const QString& visitId);
    Q_INVOKABLE void bringBack(const QString& visitId);
    /// Erases the removed visits that `binQuestion` asks about.
    Q_INVOKABLE void emptyBin();
    /// The panel that the visit’s page is to show, once: `sign`, `window`, or empty.
    Q_INVOKABLE QString takePanel();
    /// Tries again what couldn't be written or opened.
    Q_INVOKABLE void tryAgain();

signals:
    void searchChanged();
    void binChanged();
    void screenChanged();
    /// The visit’s page is to show the panel that `takePanel` gives.
    void panelAsked();
    void readyChanged();
    void faultChanged();

private:
    void start();
    void setReady();
    void setFault(const QString& fault);
    void show(const QString& asked);
    void showPanel(const QString& panel);
    void openPlace(const QString& screen, const QString& windowId, const QString& station);

    class Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace truehang
