// SPDX-License-Identifier: Apache-2.0
#include "sheet/agreed_sheet.h"

#include "figures/agreement.h"
#include "figures/choices.h"
#include "sheet/elevation.h"
#include "sheet/paper.h"
#include "sheet/sheet_head.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace truehang {

namespace {

constexpr double picture_width = 84.0;
constexpr double picture_height = 62.0;
constexpr double signature_width = 80.0;
constexpr double usual_aspect = 3.0;

/// "214.76 GBP".
std::string money_text(double amount, const std::string& currency, const SheetStyle& style) {
    return number_text(amount, 2, style) + (currency.empty() ? "" : " " + currency);
}

std::vector<std::vector<std::pair<double, double>>> strokes_of(const std::optional<Signature>& signature) {
    return signature ? signature->strokes : std::vector<std::vector<std::pair<double, double>>>();
}

/// Writes one agreement.
class AgreementWriter {
public:
    AgreementWriter(const Survey& survey, const Figures& figures, const SheetStyle& style)
        : survey_(survey),
          figures_(figures),
          style_(style),
          is_signed_(survey.signed_off && survey.signed_off->agreed),
          agreed_(is_signed_ ? *survey.signed_off->agreed : agreed_now(survey)) {}

    [[nodiscard]] std::optional<Sheet> sheet() const {
        if (agreed_.layers.empty()) {
            return std::nullopt;
        }
        Sheet sheet{.kind = SheetKind::agreed, .title = survey_.title, .corner = corner_of(survey_)};
        sheet.title = sheet.title.empty() ? say("What was agreed") : sheet.title;
        sheet.heading = heading_paragraphs(heading_lines(survey_, style_), stands_for());
        sheet.provisional = no_longer();
        for (std::size_t at = 0; at < figures_.windows.size(); ++at) {
            add_window(sheet, at);
        }
        add_gone(sheet);
        sheet.parts.emplace_back(words());
        sheet.parts.emplace_back(SheetDrawing{
            signature_drawing(is_signed_ ? survey_.signed_off->signature : std::nullopt, signature_width, px_in_mm),
            is_signed_ ? say("Signed") : say("To be signed")});
        sheet.parts.emplace_back(SheetWords{"", {signer()}});
        return sheet;
    }

private:
    [[nodiscard]] std::string stands_for() const {
        std::string text = is_signed_ ? say("The figures as they stood when they were signed")
                                      : say("The figures as they stand now; nobody has signed yet");
        if (!agreed_.rules.empty()) {
            text += ", " + say("worked by {}", agreed_.rules);
        }
        return text + (agreed_.revision ? ", " + say("revision {}", *agreed_.revision) + "." : ".");
    }

    [[nodiscard]] std::string no_longer() const {
        std::string windows;
        const auto add = [&](const std::string& title) { windows += (windows.empty() ? "" : "; ") + title; };
        for (std::size_t at = 0; at < figures_.windows.size(); ++at) {
            const auto& flags = figures_.windows[at].flags;
            const SheetPlace place = sheet_place(survey_, at);
            if (place.window != nullptr && std::ranges::find(flags, agreement_outdated, &Flag::code) != flags.end()) {
                add(window_title(*place.room, *place.window));
            }
        }
        for (const std::string& title : agreed_and_gone(survey_)) {
            add(title);
        }
        return windows.empty() ? windows : say("Changed since it was signed: {}.", windows);
    }

    [[nodiscard]] SheetBlock block_of(const AgreedLayer& layer) const {
        SheetBlock block{.key = "agreed", .title = layer.title, .beside = true};
        const auto row = [&](std::string what, SheetCell cell) {
            block.rows.push_back({{word_cell(std::move(what)), std::move(cell)}});
        };
        row(agreed_layer_says(layer), word_cell(count_word(layer.curtains)));
        row(layer.curtains == 1 ? say("Finished width") : say("Finished width, each"),
            figure_cell(written(layer.width, style_), "agreed.width_mm"));
        row(say("Finished drop"), figure_cell(written(layer.drop, style_), "agreed.drop_mm"));
        for (const AgreedCloth& cloth : layer.cloths) {
            const std::string name = cloth.name.empty() ? cloth.fabric : cloth.name;
            std::string text = number_text(cloth.length.metres(), 2, style_) + " m";
            text += cloth.cost ? ", " + money_text(*cloth.cost, cloth.currency, style_) : "";
            row(name, figure_cell(text, "agreed." + cloth.fabric));
        }
        return block;
    }

    void add_window(Sheet& sheet, std::size_t at) const {
        const SheetPlace place = sheet_place(survey_, at);
        std::vector<SheetBlock> blocks;
        for (const AgreedLayer& layer : agreed_.layers) {
            if (place.window != nullptr && layer.window == place.window->id) {
                blocks.push_back(block_of(layer));
            }
        }
        if (blocks.empty()) {
            return;
        }
        sheet.parts.emplace_back(SheetDrawing{drawing(place, figures_.windows[at])});
        for (SheetBlock& block : blocks) {
            sheet.parts.emplace_back(std::move(block));
        }
        std::vector<SheetMind> minds;
        for (const Flag& flag : figures_.windows[at].flags) {
            if (flag.code == agreement_outdated) {
                minds.push_back({.severity = flag.severity,
                                 .shape = shape_of(flag.severity),
                                 .word = worded(flag_word(flag.severity)),
                                 .text = flag.text,
                                 .code = flag.code});
            }
        }
        if (!minds.empty()) {
            sheet.parts.emplace_back(SheetMinds{say("What has changed here"), std::move(minds)});
        }
    }

    /// Agreed layers of windows that were taken out, without a drawing.
    void add_gone(Sheet& sheet) const {
        for (const AgreedLayer& layer : agreed_.layers) {
            const bool there = std::ranges::any_of(
                figures_.windows, [&](const WindowFigures& window) { return window.id == layer.window; });
            if (!there) {
                SheetBlock block = block_of(layer);
                block.beside = false;
                block.note = say("This window was taken out after the signing.");
                sheet.parts.emplace_back(std::move(block));
            }
        }
    }

    [[nodiscard]] Elevation drawing(const SheetPlace& place, const WindowFigures& figures) const {
        ElevationOptions options = elevation_options_for(survey_);
        options.width = picture_width;
        options.height = picture_height;
        options.pixel = px_in_mm;
        options.dimensions = false;
        options.drawn = Drawn::shut;
        return elevation_of(survey_, *place.room, *place.window, figures, options);
    }

    [[nodiscard]] SheetWords words() const {
        SheetWords words{.title = say("What it stands for"), .lines = {}};
        const std::string sum = agreed_sum(agreed_, style_);
        if (!sum.empty()) {
            words.lines.push_back(say("Cloth in all: {}.", sum) + " " + worded(not_a_quotation));
        }
        words.lines.push_back(
            say("The cloth is cut to these figures. Whoever wants them changed says so before it is cut."));
        if (!agreed_.digest.empty()) {
            words.lines.push_back(say("Seal of what was signed (SHA-256): {}", agreed_.digest));
        }
        return words;
    }

    [[nodiscard]] std::string signer() const {
        if (!is_signed_) {
            return say("Name and day:");
        }
        const SignedOff& signed_off = *survey_.signed_off;
        return signed_off.by + (signed_off.at.empty() ? "" : ", " + day_text(signed_off.at)) +
               (signed_off.signature ? std::string(".") : ". " + say("Signed by the typed name alone."));
    }

    const Survey& survey_;
    const Figures& figures_;
    const SheetStyle& style_;
    bool is_signed_;
    Agreed agreed_;
};

}  // namespace

Elevation signature_drawing(const std::optional<Signature>& signature, double width, double pixel) {
    const double aspect =
        signature ? std::clamp(signature->aspect.value_or(usual_aspect), 0.5, 20.0) : 2.0 * usual_aspect;
    Elevation drawing;
    drawing.width = width;
    drawing.height = width / aspect;
    drawing.title = signature ? say("The signature") : say("A line to sign on");
    drawing.description = drawing.title + ".";
    const double line = drawing.height * 0.86;
    drawing.strokes.push_back({.form = Form::line,
                               .role = Role::hairline,
                               .points = {{0.0, line}, {width, line}},
                               .width = pixel,
                               .part = "line"});
    for (const auto& points : strokes_of(signature)) {
        Stroke stroke{.form = Form::polyline, .role = Role::ink, .width = 2.2 * pixel, .part = "signature"};
        for (const auto& [x, y] : points) {
            stroke.points.push_back({x * width, y * drawing.height});
        }
        if (stroke.points.size() == 1) {  // a dot
            stroke.points.push_back({stroke.points[0].x + 2.2 * pixel, stroke.points[0].y});
        }
        if (!stroke.points.empty()) {
            drawing.strokes.push_back(std::move(stroke));
        }
    }
    return drawing;
}

std::optional<Sheet> agreed_sheet(const Survey& survey, const Figures& figures, const SheetStyle& style) {
    return AgreementWriter(survey, figures, style).sheet();
}

std::string agreed_sum(const Agreed& agreed, const SheetStyle& style) {
    std::vector<Money> sums;
    for (const AgreedLayer& layer : agreed.layers) {
        for (const AgreedCloth& cloth : layer.cloths) {
            const auto sum = std::ranges::find(sums, cloth.currency, &Money::currency);
            if (cloth.cost && sum == sums.end()) {
                sums.push_back({cloth.currency, *cloth.cost});
            } else if (cloth.cost) {
                sum->amount += *cloth.cost;
            }
        }
    }
    std::string text;
    for (const Money& sum : sums) {
        text += (text.empty() ? "" : " and ") + money_text(sum.amount, sum.currency, style);
    }
    return text;
}

}  // namespace truehang
