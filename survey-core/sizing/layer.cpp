// SPDX-License-Identifier: Apache-2.0
#include "sizing/layer.h"

#include <algorithm>

namespace truehang {

namespace {

template <class E>
void add_unknown(const std::optional<Word<E>>& word, std::vector<std::string>& unknown) {
    if (word && !word->known()) {
        unknown.push_back(word->text());
    }
}

template <class E>
E known_or(const std::optional<Word<E>>& word, E otherwise) {
    return word ? word->known().value_or(otherwise) : otherwise;
}

}  // namespace

Length LayerAsked::diameter() const {
    return hardware == nullptr || is_on_track() || is_blind() ? Length() : hardware->diameter.value_or(Length());
}

std::vector<std::string> unknown_words(const Layer& layer) {
    std::vector<std::string> unknown;
    if (layer.hardware) {
        add_unknown(layer.hardware->kind, unknown);
        add_unknown(layer.hardware->supply, unknown);
        add_unknown(layer.hardware->hang, unknown);
        add_unknown(layer.hardware->run, unknown);
        add_unknown(layer.hardware->stage, unknown);
    }
    if (layer.treatment) {
        add_unknown(layer.treatment->heading, unknown);
        add_unknown(layer.treatment->fit, unknown);
        add_unknown(layer.treatment->layout, unknown);
        add_unknown(layer.treatment->length, unknown);
        add_unknown(layer.treatment->lining_hung, unknown);
        add_unknown(layer.treatment->operation, unknown);
        add_unknown(layer.treatment->weights, unknown);
        if (layer.treatment->tie_back) {
            add_unknown(layer.treatment->tie_back->kind, unknown);
        }
        add_unknown(layer.treatment->top, unknown);
        add_unknown(layer.treatment->drops, unknown);
    }
    return unknown;
}

std::optional<LayerAsked> asked_of(const Layer& layer) {
    if (!layer.treatment || !layer.treatment->heading || !unknown_words(layer).empty()) {
        return std::nullopt;
    }
    LayerAsked asked;
    asked.treatment = &*layer.treatment;
    asked.heading = *layer.treatment->heading->known();
    asked.layout = known_or(layer.treatment->layout, Layout::pair);
    asked.hem_at = known_or(layer.treatment->length, HemAt::floor);
    asked.fit = known_or(layer.treatment->fit, Fit::inside);
    asked.fullness = layer.treatment->fullness.value_or(heading_rule(asked.heading).fullness);
    if (!asked.is_blind()) {
        asked.top = known_or(layer.treatment->top, TopEdge::straight);
        asked.drops = known_or(layer.treatment->drops, DropsAt::one);
    }
    if (layer.hardware) {
        asked.hardware = &*layer.hardware;
        asked.hardware_kind =
            known_or(layer.hardware->kind, asked.is_blind() ? HardwareKind::headrail : HardwareKind::pole);
        asked.hang = known_or(layer.hardware->hang, Hang::level);
        asked.run = known_or(layer.hardware->run, Run::straight);
    } else if (asked.is_blind()) {
        asked.hardware_kind = HardwareKind::headrail;
    }
    return asked;
}

void Findings::flag(std::string code, Severity severity, std::string text, std::vector<std::string> stations,
                    std::string obstruction) {
    flags.push_back({std::move(code), severity, std::move(stations), std::move(text), std::move(obstruction), "", {}});
}

bool Findings::stops() const { return std::ranges::count(flags, Severity::stop, &Flag::severity) > 0; }

TraceOf::TraceOf(Findings& findings, std::string figure) : findings_(findings) { trace_.figure = std::move(figure); }

TraceOf::~TraceOf() { findings_.trace.push_back(std::move(trace_)); }

TraceOf& TraceOf::mm(std::string what, Length value, std::vector<std::string> from) {
    trace_.steps.push_back({std::move(what), value.mm(), std::nullopt, std::nullopt, std::move(from)});
    return *this;
}

TraceOf& TraceOf::count(std::string what, double value, std::vector<std::string> from) {
    trace_.steps.push_back({std::move(what), std::nullopt, value, std::nullopt, std::move(from)});
    return *this;
}

TraceOf& TraceOf::ratio(std::string what, double value, std::vector<std::string> from) {
    trace_.steps.push_back({std::move(what), std::nullopt, std::nullopt, value, std::move(from)});
    return *this;
}

}  // namespace truehang
