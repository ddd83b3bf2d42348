// SPDX-License-Identifier: Apache-2.0
#include "send_model.h"

#include "devices.h"
#include "document/document.h"
#include "open_visit.h"
#include "photo_import.h"
#include "picture_code.h"
#include "protocol/pairing_text.h"
#include "sending.h"
#include "survey/photos.h"
#include "survey_keeping.h"
#include "work_aside.h"
#include "writing.h"

#include <QRegularExpression>
#include <algorithm>
#include <chrono>

namespace truehang {

using Stitch = thread_mark::Mark;

namespace {

/// Edits that follow each other closely go as one revision.
constexpr std::chrono::milliseconds quiet_before_sending{1'500};

/// Millions of bytes, to a tenth.
QString megabytes(long long bytes) {
    QString number = QString::number(static_cast<double>(bytes) / 1e6, 'f', 1);
    return number.replace(QLatin1Char('.'), QLatin1Char(decimal_mark()));
}

}  // namespace

SendModel::SendModel(OpenVisit& open, SurveyKeeping& keeping, Devices& devices, QObject* parent)
    : QObject(parent),
      open_(open),
      keeping_(keeping),
      devices_(devices),
      sending_(std::make_unique<Sending>(keeping)),
      items_({"item", "title", "state", "mark", "spoken"}) {
    sending_->mind(open);
    connect(sending_.get(), &Sending::moved, this, &SendModel::show);
    connect(sending_.get(), &Sending::questionsCame, this, &SendModel::questionsCame);
    connect(sending_.get(), &Sending::rulesCame, this, &SendModel::rulesCame);
    connect(sending_.get(), &Sending::broughtTogether, this, [this](const QString& visit) {
        open_.askStanding();
        emit came(visit);
        emit arrived(visit);
    });
    connect(sending_.get(), &Sending::confirmed, this, [this] {
        open_.askStanding();
        emit arrived(open_.visitId());
    });
    connect(&open_, &OpenVisit::opened, this, [this] {
        stored_.clear();
        file_line_.clear();
        show();
    });
    quiet_.setSingleShot(true);
    connect(&quiet_, &QTimer::timeout, this, [this] { sending_->look(); });
    connect(&open_, &OpenVisit::standingChanged, this, [this] {
        quiet_.start(quiet_before_sending);
        show();
    });
}

SendModel::~SendModel() = default;

void SendModel::begin() { sending_->begin(); }
bool SendModel::paired() const { return sending_->workroom().has_value(); }

QString SendModel::workroom() const {
    if (!paired()) {
        return {};
    }
    const QString address = shown(sending_->workroom()->address);
    const QString name = sending_->workroomName();
    return name.isEmpty() ? tr("Workroom at %1").arg(address) : tr("%1 at %2").arg(name, address);
}

QString SendModel::address() const {
    return address_.isEmpty() && paired() ? shown(sending_->workroom()->address) : address_;
}

QUrl SendModel::cameraSource() const { return devices_.camera->source(); }
bool SendModel::pairing() const { return pairing_; }
QString SendModel::pairFault() const { return pair_fault_; }

QString SendModel::line() const {
    const auto link = sending_->link();
    if (!paired()) {
        return tr("No workroom yet. Everything is kept on this phone.");
    }
    const auto waits = [](const OutboxItem& item) { return item.state == ItemState::waiting; };
    const auto is_there = [](const OutboxItem& item) { return item.state == ItemState::confirmed; };
    if (std::ranges::any_of(stored_, waits)) {
        switch (link.state) {
            case sync::Link::State::unreachable:
            case sync::Link::State::asked_to_wait:
            case sync::Link::State::pair_again:
                return shown(link.text);
            default:
                break;
        }
    }
    const auto there = std::ranges::count_if(stored_, is_there);
    const auto all = static_cast<std::ptrdiff_t>(stored_.size());
    if (all == 0) {
        return tr("Nothing to send yet");
    }
    return there == all ? tr("All at the workroom") : tr("%1 of %2 at the workroom").arg(there).arg(all);
}

thread_mark::Mark SendModel::mark() const {
    const auto is_there = [](const OutboxItem& item) { return item.state == ItemState::confirmed; };
    if (stored_.empty()) {
        return Stitch::ToDo;
    }
    if (std::ranges::all_of(stored_, is_there)) {
        return Stitch::There;
    }
    return std::ranges::any_of(stored_, is_there) ? Stitch::HalfThere : Stitch::Kept;
}

bool SendModel::offersFile() const { return open_.isOpen() && mark() != Stitch::There; }
QString SendModel::fileLine() const { return file_line_; }

void SendModel::show() {
    if (!open_.isOpen()) {
        stored_.clear();
        showItems();
        return;
    }
    keeping_.post(
        this, [visit = open_.survey().id](Store& store) { return store.items_of(visit); },
        [this, visit = open_.visitId()](Result<std::vector<OutboxItem>> items) {
            if (items && visit == open_.visitId()) {
                stored_ = std::move(items).value();
                showItems();
            }
        });
}

QString SendModel::itemTitle(const OutboxItem& item) const {
    if (item.kind == ItemKind::survey) {
        return tr("The visit, version %1").arg(item.revision);
    }
    if (item.kind == ItemKind::answer) {
        return tr("An answer to the workroom");
    }
    for (const PhotoPlace& place : photos_in(open_.survey())) {
        if (place.photo->sha256 == item.id) {
            const QString whose = shown(place.window ? place.window->name : place.room->name);
            return place.photo->caption.empty() ? tr("Photo, %1").arg(whose) : shown(place.photo->caption);
        }
    }
    return tr("A photo that was taken out");
}

void SendModel::showItems() {
    QList<ShownRows::Row> rows;
    for (const OutboxItem& item : stored_) {
        const auto state = sending_->stateOf(item);
        QString words = tr("waiting");
        Stitch mark = Stitch::Kept;
        if (state.standing == sync::Standing::there) {
            words = tr("at the workroom");
            mark = Stitch::There;
        } else if (state.standing == sync::Standing::on_its_way) {
            words = state.bytes_there > 0
                        ? tr("on its way, %1 of %2 MB").arg(megabytes(state.bytes_there), megabytes(item.bytes))
                        : tr("on its way");
            mark = Stitch::UnderWay;
        } else if (state.standing == sync::Standing::refused) {
            words = tr("refused: %1").arg(shown(state.why));
        } else if (!state.why.empty() || !item.why.empty()) {
            const QString why = shown(state.why.empty() ? item.why : state.why);
            words = state.bytes_there > 0 ? tr("waiting, %1 of %2 MB at the workroom: %3")
                                                .arg(megabytes(state.bytes_there), megabytes(item.bytes), why)
                                          : tr("waiting: %1").arg(why);
        }
        const QString key = item.kind == ItemKind::survey ? QStringLiteral("survey") : shown(item.id);
        const QString title = itemTitle(item);
        rows.append({key, title, words, QVariant::fromValue(mark), QStringLiteral("%1: %2").arg(title, words)});
    }
    items_.setRows(rows);
    emit changed();
}

QString SendModel::pinLine() const {
    return told_.pin.isEmpty() ? QString()
                               : tr("Only the workroom with the certificate %1 %2 … is trusted.")
                                     .arg(told_.pin.first(4), told_.pin.sliced(4, 4));
}

bool SendModel::takePairingText(const QString& words) {
    const auto text = sync::read_pairing_text(bytes(words));
    if (text) {
        told_ = {shown(text->address), shown(text->code), shown(text->pin)};
        address_ = told_.address;
        pair_fault_.clear();
    } else if (words != told_.address) {
        told_ = {};
    }
    emit changed();
    return text.ok();
}

void SendModel::takePairingPicture(const QUrl& file) {
    const auto read = devices_.files->read(file, photo_file_limit);
    looking_ = read.ok();
    pair_fault_ = fault_of(read);
    emit changed();
    if (!read) {
        return;
    }
    aside(
        this, [picture = *read] { return codes_in(picture); },
        [this](const Result<QStringList>& codes) {
            looking_ = false;
            if (codes) {
                takeFirstPairingText(*codes);
            } else {
                pair_fault_ = fault_of(codes);
                emit changed();
            }
        });
}

void SendModel::takeFirstPairingText(const QStringList& codes) {
    const auto pairs = [](const QString& code) { return sync::read_pairing_text(bytes(code)).ok(); };
    const auto found = std::ranges::find_if(codes, pairs);
    if (found != codes.end()) {
        takePairingText(*found);
        emit tookPairingText();
        return;
    }
    pair_fault_ = codes.isEmpty()
                      ? tr("No code can be read in this picture. Take it again from nearer: sharp, without glare, and "
                           "with the white all round the code.")
                      : tr("The code in this picture isn’t one for pairing. On the workroom’s page of devices choose "
                           "“Pair a phone”, and take a picture of the code that stands there.");
    emit changed();
}

void SendModel::pair(const QString& address, const QString& code) {
    const bool as_text = sync::is_pairing_text(bytes(address));
    const bool read = takePairingText(address);
    if (!read) {
        address_ = address;
    }
    if (as_text && !read) {
        pair_fault_ = tr("This isn’t the whole pairing text. Copy it anew from the workroom’s page.");
        emit changed();
        return;
    }
    pair_fault_.clear();
    pairing_ = true;
    emit changed();
    sending_->pair(address_, read ? told_.code : code, told_.pin, [this](const QString& fault) {
        pairing_ = false;
        pair_fault_ = fault;
        if (fault.isEmpty()) {
            told_ = {};
        }
        emit changed();
    });
}

void SendModel::forgetWorkroom() {
    sending_->unpair();
    emit changed();
}

void SendModel::sendNow() { sending_->look(true); }

void SendModel::visitCame() { sending_->askQuestionsAnew(); }

void SendModel::sendAgain(const QString& item) {
    for (const OutboxItem& one : stored_) {
        const QString key = one.kind == ItemKind::survey ? QStringLiteral("survey") : shown(one.id);
        if (key == item) {
            sending_->sendAgain(one);
        }
    }
}

bool SendModel::shareFile() { return !written_.isEmpty() && devices_.share->share(written_); }

void SendModel::saveAsFile(const QUrl& file) {
    if (!open_.isOpen()) {
        return;
    }
    QUrl to = file;
    if (to.isEmpty()) {
        static const QRegularExpression not_in_names(QStringLiteral("[^\\w -]+"));
        QString name = shown(open_.survey().title).remove(not_in_names).trimmed();
        name = name.isEmpty() ? shown(open_.survey().id) : name;
        to = QUrl::fromLocalFile(devices_.files->documents().toLocalFile() + QLatin1Char('/') + name +
                                 QStringLiteral(".json"));
    }
    const auto wrote = devices_.files->write(to, QByteArray::fromStdString(write_survey(open_.survey())));
    written_ = wrote ? to : QUrl();
    file_line_ = wrote ? tr("Written: %1. It holds the survey; photos go to the workroom.").arg(to.toLocalFile())
                       : fault_of(wrote);
    emit changed();
}

}  // namespace truehang
