// SPDX-License-Identifier: Apache-2.0
#include "agreement_model.h"

#include "document/document.h"
#include "figures/agreement.h"
#include "figures/choices.h"
#include "open_visit.h"
#include "sheet/agreed_sheet.h"
#include "sheet/words.h"
#include "store/sha256.h"
#include "trade_words.h"
#include "whereabouts.h"
#include "writing.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QPointF>
#include <algorithm>

namespace truehang {

namespace {

std::optional<Signature> signature_of(const QVariantList& strokes, qreal aspect) {
    Signature signature;
    signature.aspect = std::clamp(static_cast<double>(aspect), 0.1, 20.0);
    for (const QVariant& stroke : strokes) {
        auto& points = signature.strokes.emplace_back();
        for (const QVariant& point : stroke.toList()) {
            points.emplace_back(point.toPointF().x(), point.toPointF().y());
        }
    }
    return signature.strokes.empty() ? std::nullopt : std::optional(signature);
}

/// Strokes as a text, "[[x,y,x,y],[x,y]]", fractions of the box.
QString text_of(const QVariantList& strokes) {
    QJsonArray list;
    for (const QVariant& stroke : strokes) {
        QJsonArray points;
        for (const QVariant& point : stroke.toList()) {
            points.append(point.toPointF().x());
            points.append(point.toPointF().y());
        }
        list.append(points);
    }
    return QString::fromUtf8(QJsonDocument(list).toJson(QJsonDocument::Compact));
}

/// The same back; empty where it is no such text.
QVariantList strokes_of(const QString& text) {
    QVariantList strokes;
    for (const QJsonValue stroke : QJsonDocument::fromJson(text.toUtf8()).array()) {
        const QJsonArray numbers = stroke.toArray();
        QVariantList points;
        for (qsizetype at = 0; at + 1 < numbers.size(); at += 2) {
            points.append(QPointF(numbers[at].toDouble(), numbers[at + 1].toDouble()));
        }
        strokes.append(QVariant(points));
    }
    return strokes;
}

}  // namespace

SignedOff signed_now(const Survey& survey, const QString& name, const std::string& at,
                     const std::optional<Signature>& signature) {
    SignedOff signed_off;
    signed_off.by = bytes(name.trimmed());
    signed_off.at = at;
    signed_off.signature = signature;
    Agreed agreed = agreed_now(survey);
    agreed.digest = sha256_hex(sealed_text(agreed));
    signed_off.agreed = std::move(agreed);
    return signed_off;
}

AgreementModel::AgreementModel(OpenVisit& open, QObject* parent)
    : QObject(parent),
      open_(open),
      layers_({"key", "title", "says", "sizes", "cloth", "spoken"}),
      unsettled_({"text"}),
      gaps_({"key", "title", "text", "windowId"}) {
    connect(&open_, &OpenVisit::opened, this, [this] { fault_.clear(); });
    connect(&open_, &OpenVisit::changed, this, &AgreementModel::show);
    show();
}

bool AgreementModel::signedOff() const { return open_.survey().signed_off.has_value(); }

QString AgreementModel::line() const {
    const auto& signed_off = open_.survey().signed_off;
    if (!signed_off) {
        return {};
    }
    const QString line = tr("Agreed by %1, %2").arg(shown(signed_off->by), shown(day_text(signed_off->at)));
    QStringList titles;
    for (int row = 0; row < gaps_.count(); ++row) {
        const QString title = gaps_.value(row, QStringLiteral("title")).toString();
        if (!titles.contains(title)) {
            titles.append(title);
        }
    }
    return titles.isEmpty() ? line : tr("%1. It no longer covers %2").arg(line, titles.join(QStringLiteral("; ")));
}

QString AgreementModel::placeOf(const char* part) const {
    return QStringLiteral("sign/%1/%2").arg(open_.visitId(), QLatin1String(part));
}

QString AgreementModel::name() const {
    const auto& client = open_.survey().client;
    const QString place = placeOf("name");
    return open_.place().has(place) ? open_.place().text(place) : client ? shown(client->name) : QString();
}

void AgreementModel::typing(const QString& name) { open_.place().setText(placeOf("name"), name, true); }

void AgreementModel::drawing(const QVariantList& strokes) {
    open_.place().setText(placeOf("strokes"), strokes.isEmpty() ? QString() : text_of(strokes));
}

QVariantList AgreementModel::signature() const {
    const auto& signed_off = open_.survey().signed_off;
    if (!signed_off) {
        return strokes_of(open_.place().text(placeOf("strokes")));
    }
    QVariantList strokes;
    if (signed_off->signature) {
        for (const auto& stroke : signed_off->signature->strokes) {
            QVariantList points;
            for (const auto& [x, y] : stroke) {
                points.append(QPointF(x, y));
            }
            strokes.append(QVariant(points));
        }
    }
    return strokes;
}

qreal AgreementModel::aspect() const {
    const auto& signed_off = open_.survey().signed_off;
    return signed_off && signed_off->signature ? signed_off->signature->aspect.value_or(3.0) : 3.0;
}

void AgreementModel::setShown(bool shown) {
    if (shown_ != shown) {
        shown_ = shown;
        show();
    }
}

void AgreementModel::show() {
    showGaps();
    showLayers();
    emit changed();
}

void AgreementModel::showGaps() {
    const Survey& survey = open_.survey();
    QList<ShownRows::Row> rows;
    if (survey.signed_off && survey.signed_off->agreed) {
        for (const WindowFigures& window : open_.figures().windows) {
            for (const Flag& flag : window.flags) {
                if (flag.code == agreement_outdated) {
                    const QString id = shown(window.id);
                    rows.append({QStringLiteral("%1/%2/%3").arg(id, shown(flag.layer)).arg(rows.size()),
                                 open_.titleOf(id), shown(flag.text), id});
                }
            }
        }
        for (const std::string& title : agreed_and_gone(survey)) {
            rows.append({QStringLiteral("gone/%1").arg(rows.size()), shown(title),
                         tr("This window was taken out after the signing."), QString()});
        }
    }
    gaps_.setRows(rows);
}

void AgreementModel::showLayers() {
    const Survey& survey = open_.survey();
    QList<ShownRows::Row> layers;
    QList<ShownRows::Row> unsettled;
    sum_.clear();
    broken_.clear();
    if (shown_ && open_.isOpen()) {
        const SheetStyle style{entry_unit(survey), decimal_mark()};
        const bool frozen = survey.signed_off && survey.signed_off->agreed;
        const Agreed agreed = frozen ? *survey.signed_off->agreed : survey.signed_off ? Agreed() : agreed_now(survey);
        for (const AgreedLayer& layer : agreed.layers) {
            const QString sizes = (layer.curtains > 1 ? tr("each %1 wide, %2 long") : tr("%1 wide, %2 long"))
                                      .arg(truehang::shown(survey, layer.width), truehang::shown(survey, layer.drop));
            QStringList cloths;
            for (const AgreedCloth& cloth : layer.cloths) {
                cloths.append(tr("%1: %2\u00a0m")
                                  .arg(shown(cloth.name.empty() ? cloth.fabric : cloth.name),
                                       shown(number_text(cloth.length.metres(), 2, style))));
            }
            const QString hangs = shown(agreed_layer_says(layer));
            const QString cloth = cloths.join(QLatin1Char('\n'));
            layers.append({QStringLiteral("%1/%2").arg(shown(layer.window), shown(layer.layer)), shown(layer.title),
                           hangs, sizes, cloth,
                           QStringLiteral("%1: %2, %3. %4").arg(shown(layer.title), hangs, sizes, cloth)});
        }
        if (const std::string sum = agreed_sum(agreed, style); !sum.empty()) {
            sum_ = tr("Cloth in all: %1. %2").arg(shown(sum), shown(worded(not_a_quotation)));
        }
        if (!agreed.digest.empty() && sha256_hex(sealed_text(agreed)) != agreed.digest) {
            broken_ = tr("What is written down as agreed isn’t what was signed. Have it signed again.");
        }
        for (const std::string& text :
             survey.signed_off ? std::vector<std::string>() : truehang::unsettled(survey, open_.figures())) {
            unsettled.append(ShownRows::Row{shown(text)});
        }
    }
    layers_.setRows(layers);
    unsettled_.setRows(unsettled);
}

bool AgreementModel::sign(const QString& name, const QVariantList& strokes, qreal aspect) {
    fault_.clear();
    if (name.trimmed().isEmpty()) {
        fault_ = tr("Type the name of the one who agrees.");
    } else if (layers_.count() == 0) {
        fault_ = tr("There is nothing to agree yet.");
    }
    if (!fault_.isEmpty()) {
        emit changed();
        return false;
    }
    return open_.edit(
        tr("Agreed by %1").arg(name.trimmed()),
        [name, signature = signature_of(strokes, aspect), at = open_.now()](Survey& survey) {
            survey.signed_off = signed_now(survey, name, at, signature);
            return true;
        },
        [this, drafts = QStringList{placeOf("name"), placeOf("strokes")}](const QString& fault) {
            for (const QString& draft : fault.isEmpty() ? drafts : QStringList()) {
                open_.place().forget(draft);
            }
        });
}

void AgreementModel::takeBack() {
    open_.edit(tr("Agreement taken back"), [](Survey& survey) {
        const bool was = survey.signed_off.has_value();
        survey.signed_off.reset();
        return was;
    });
}

}  // namespace truehang
