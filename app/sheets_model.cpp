// SPDX-License-Identifier: Apache-2.0
#include "sheets_model.h"

#include "devices.h"
#include "open_visit.h"
#include "sheet_stamp.h"
#include "survey_keeping.h"
#include "trade_words.h"
#include "writing.h"

#include <QFile>
#include <QRegularExpression>
#include <QTemporaryDir>

namespace truehang {

namespace {

std::vector<SheetKind> kinds_of(const QString& word) {
    if (const auto kind = sheet_kind(bytes(word))) {
        return {*kind};
    }
    return {SheetKind::measure, SheetKind::cutting, SheetKind::making, SheetKind::hanging};
}

/// What a file of this kind's sheets is called.
QString file_word(SheetKind kind) {
    switch (kind) {
        case SheetKind::measure:
            return SheetsModel::tr("measure sheets");
        case SheetKind::cutting:
            return SheetsModel::tr("cutting list");
        case SheetKind::making:
            return SheetsModel::tr("making sheets");
        case SheetKind::light:
            return SheetsModel::tr("light sheets");
        case SheetKind::agreed:
            return SheetsModel::tr("agreement");
        case SheetKind::hanging:
            break;
    }
    return SheetsModel::tr("hanging sheets");
}

/// The sheets as one PDF; none where the work was stopped.
Result<std::optional<QByteArray>> pdf_of(const Survey& survey, const PrintAsked& asked, const LongWork& work) {
    const QTemporaryDir folder;
    const QString scratch = folder.filePath(QStringLiteral("sheets.pdf"));
    const auto printed = print_sheets(survey, asked, scratch, work);
    if (!printed) {
        return printed.error();
    }
    if (!*printed) {
        return std::optional<QByteArray>();
    }
    QFile pdf(scratch);
    if (!pdf.open(QIODevice::ReadOnly)) {
        return Error{ErrorCode::io, bytes(scratch), bytes(pdf.errorString())};
    }
    return std::optional(pdf.readAll());
}

}  // namespace

SheetsModel::SheetsModel(OpenVisit& open, Devices& devices, QObject* parent)
    : QObject(parent), open_(open), devices_(devices) {
    connect(&open, &OpenVisit::opened, this, [this] {
        unit_.reset();
        window_.clear();
        forget();
    });
    connect(&open, &OpenVisit::changed, this, &SheetsModel::forget);
    connect(&aside_, &WorkAside::progressed, this, [this](int percent) {
        percent_ = percent;
        emit changed();
    });
}

void SheetsModel::forget() {
    if (!open_.window(window_)) {  // taken out meanwhile
        window_.clear();
    }
    line_.clear();
    written_.clear();
    emit changed();
}

QString SheetsModel::paper() const { return shown(word_of(paper_)); }

QString SheetsModel::unit() const {
    const auto unit = unit_ || !open_.isOpen() ? unit_ : std::optional(sheet_style_for(open_.survey()).unit);
    return unit == LengthUnit::in ? QStringLiteral("in") : QStringLiteral("mm");
}

void SheetsModel::setKind(const QString& kind) {
    kind_ = kind;
    forget();
}

void SheetsModel::setWindow(const QString& window) {
    window_ = open_.window(window) ? window : QString();
    forget();
}

QVariantList SheetsModel::windows() const {
    QVariantList windows{choice({}, tr("all windows"))};
    for (const Room& room : open_.survey().rooms) {
        for (const Window& window : room.windows) {
            windows.append(choice(shown(window.id), open_.titleOf(shown(window.id))));
        }
    }
    return windows;
}

void SheetsModel::setPaper(const QString& paper) {
    paper_ = paper_of(bytes(paper)).value_or(paper_);
    forget();
}

void SheetsModel::setUnit(const QString& unit) {
    unit_ = unit == QLatin1String("in") ? LengthUnit::in : LengthUnit::mm;
    forget();
}

QUrl SheetsModel::place() const {
    static const QRegularExpression not_in_names(QStringLiteral("[^\\w -]+"));
    QString name = shown(open_.survey().title).remove(not_in_names).trimmed();
    name = name.isEmpty() ? shown(open_.survey().id) : name;
    const auto kind = sheet_kind(bytes(kind_));
    const QString what = kind ? file_word(*kind) : tr("all sheets");
    if (!window_.isEmpty()) {
        name += QStringLiteral(", ") + open_.titleOf(window_).remove(not_in_names).trimmed();
    }
    return QUrl::fromLocalFile(
        QStringLiteral("%1/%2, %3.pdf").arg(devices_.files->documents().toLocalFile(), name, what));
}

QString SheetsModel::doing() const { return working_ ? tr("Writing the PDF, %1 %").arg(percent_) : QString(); }

void SheetsModel::print() {
    if (!open_.isOpen() || working_) {
        return;
    }
    PrintAsked asked;
    asked.kinds = kinds_of(kind_);
    asked.window = window_;
    asked.paper = paper_;
    asked.unit = length_unit(bytes(unit()));
    working_ = true;
    percent_ = 0;
    line_.clear();
    written_.clear();
    aside_.begin();
    // Asked behind all edits so far: what is stamped is the revision that is printed.
    open_.keeping().post(
        this, [visit = open_.survey().id](Store& store) { return sheet_stamp(store, visit); },
        [this, survey = open_.survey(), asked, file = place()](Result<std::optional<SheetStamp>> stamp) mutable {
            if (!stamp) {
                return end(stamp.error(), file);
            }
            asked.stamp = std::move(stamp).value();
            aside_.run(
                [survey = std::move(survey), asked](const LongWork& work) { return pdf_of(survey, asked, work); },
                [this, file](const Result<std::optional<QByteArray>>& pdf) { end(pdf, file); });
        });
    emit changed();
}

void SheetsModel::end(const Result<std::optional<QByteArray>>& pdf, const QUrl& file) {
    working_ = false;
    if (!pdf) {
        line_ = fault_of(pdf);
    } else if (!*pdf) {
        line_ = tr("Stopped. Nothing was written.");
    } else {
        const auto kept = devices_.files->write(file, **pdf);
        written_ = kept ? file : QUrl();
        line_ = kept ? tr("Written: %1").arg(file.toLocalFile()) : fault_of(kept);
    }
    emit changed();
}

void SheetsModel::stop() { aside_.stop(); }

bool SheetsModel::handOn() { return written() && devices_.share->share(written_); }

}  // namespace truehang
