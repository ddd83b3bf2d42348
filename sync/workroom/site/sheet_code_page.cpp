// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/sheet_code_page.h"

#include "protocol/paths.h"
#include "protocol/sheet_code.h"
#include "sheet/words.h"
#include "workroom/site/frame.h"
#include "workroom/site/steps_page.h"
#include "workroom/site/steps_table.h"

#include <fmt/format.h>

namespace truehang::workroom {

namespace {

struct Found {
    std::string survey;
    long long revision = 0;
    bool erased = false;
};

/// The revision whose digest begins so, or that one was erased; nothing where neither is here.
Result<std::optional<Found>> find_sheet(Archive& archive, const std::string& digits) {
    return archive.database().read<std::optional<Found>>([&](Records& records) -> Result<std::optional<Found>> {
        Query query(records,
                    "SELECT survey, revision FROM revision WHERE sha256 >= ? AND sha256 < ? ORDER BY revision DESC"
                    " LIMIT 1");
        query.bind(1, digits);
        query.bind(2, end_of_beginning(digits));
        if (query.step()) {
            return std::optional(Found{query.text(0), query.number(1), false});
        }
        Query erased(records, "SELECT 1 FROM erased_sheet WHERE digest_start = ?");
        erased.bind(1, digits);
        return erased.step() ? std::optional(Found{"", 0, true}) : std::nullopt;
    });
}

View layer_view(const LayerDifference& layer, const View& revisions) {
    auto entry = revisions;
    entry.set("title", layer.layer.empty() ? layer.title : layer.title + ", " + layer.layer);
    entry.set("said", layer.came             ? View{"It wasn’t there yet."}
                      : layer.went           ? View{"It is no longer there."}
                      : layer.figures_differ ? truth(false)
                                             : View{"The figures are the same; what is to be minded differs."});
    set_differences(entry, layer.lines);
    return entry;
}

SheetCodePage plain_page(int status, const std::string& title, const std::string& said) {
    auto values = view();
    values.set("title", title);
    values.set("said", said);
    values.set("code", truth(false));
    values.set("href", truth(false));
    values.set("layers_some", truth(false));
    values.set("bought_some", truth(false));
    return {status, framed({title, "page-sheet-code", {{"/", "Surveys"}}, false}, fill("sheet_code", values))};
}

void set_superseded(View& values, const StepsTable& table, const MadeHouse& then, long long revision) {
    const auto differs = written_differences(table.survey, then, table.made, sheet_style_for(table.survey));
    auto revisions = view();
    revisions.set("before", fmt::format("revision {}", revision));
    revisions.set("after", fmt::format("revision {}", table.newest()));
    auto layers = view_list();
    bool figures_differ = !differs.bought.empty();
    for (const LayerDifference& layer : differs.layers) {
        layers << layer_view(layer, revisions);
        figures_differ = figures_differ || layer.figures_differ || layer.came || layer.went;
    }
    values.set("said", figures_differ
                           ? fmt::format("Revision {} came in {}, and its figures differ: don’t cut from this sheet. "
                                         "Print it anew.",
                                         table.newest(), moment_text(table.receipts.back().received_at))
                           : fmt::format("Revision {} came in {}. The figures are the same.", table.newest(),
                                         moment_text(table.receipts.back().received_at)));
    values.set("layers_some", truth(!differs.layers.empty()));
    values.set("layers", layers);
    auto bought = revisions;
    set_differences(bought, differs.bought);
    values.set("bought_some", truth(!differs.bought.empty()));
    values.set("bought", bought);
}

Result<SheetCodePage> page_of(Archive& archive, const Found& found, const std::string& code) {
    const auto table = lay_out_steps(archive, found.survey);
    const auto then = made_by_revision(archive, found.survey, found.revision);
    if (!table || !then) {
        return table ? then.error() : table.error();
    }
    if (!*table || !*then) {
        return Error{ErrorCode::damaged, "revision", "A stored document can’t be read any more."};
    }
    const bool is_newest = (*table)->newest() == found.revision;
    const std::string title = fmt::format("Revision {}: {}", found.revision, is_newest ? "current" : "superseded");
    auto values = view();
    values.set("title", title);
    values.set("code", code);
    values.set("href", "/surveys/" + sync::percent_encode(found.survey));
    values.set("visit", (*table)->survey.title.empty() ? "Untitled visit" : (*table)->survey.title);
    values.set("layers_some", truth(false));
    values.set("bought_some", truth(false));
    if (is_newest) {
        values.set("said", "This sheet is of the newest revision that has come in.");
    } else {
        set_superseded(values, **table, **then, found.revision);
    }
    return SheetCodePage{200,
                         framed({title, "page-sheet-code", {{"/", "Surveys"}}, false}, fill("sheet_code", values))};
}

}  // namespace

std::optional<Result<SheetCodePage>> sheet_code_page(Archive& archive, std::string_view path) {
    const auto start = sync::sheet_code_path("");
    if (!path.starts_with(start) || path.find('/', start.size()) != std::string_view::npos) {
        return std::nullopt;
    }
    const auto typed = sync::percent_decode(path.substr(start.size()));
    const auto digits = typed ? sync::read_sheet_code(*typed) : std::nullopt;
    const auto found = digits ? find_sheet(archive, *digits) : Result<std::optional<Found>>(std::optional<Found>());
    if (!found) {
        return found.error();
    }
    if (!*found) {
        return plain_page(404, "No such sheet",
                          "No sheet of this workroom has that code. Type it as it stands on the sheet; a sheet of "
                          "another workroom is looked up there.");
    }
    if ((*found)->erased) {
        return plain_page(410, "Erased", "The survey that this sheet was printed of was erased here for good.");
    }
    return page_of(archive, **found, *typed);
}

}  // namespace truehang::workroom
