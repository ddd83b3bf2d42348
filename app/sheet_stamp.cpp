// SPDX-License-Identifier: Apache-2.0
#include "sheet_stamp.h"

#include "protocol/records.h"
#include "protocol/sheet_code.h"

namespace truehang {

Result<std::optional<SheetStamp>> sheet_stamp(Store& store, std::string_view visit) {
    const auto summary = store.summary(visit);
    if (!summary) {
        return summary.error();
    }
    const auto kept = store.receipt(ItemKind::survey, visit, summary->revision);
    const auto workroom = store.pairing();
    if (!kept || !workroom) {
        return kept ? workroom.error() : kept.error();
    }
    if (!*kept && !*workroom) {
        return std::optional<SheetStamp>();
    }
    SheetStamp stamp{.revision = summary->revision};
    if (*kept) {
        const auto receipt = sync::read_survey_receipt(**kept);
        if (!receipt) {
            return receipt.error();
        }
        stamp.code = sync::sheet_code(receipt->sha256);
        stamp.received = receipt->received_at;
        stamp.address = *workroom ? (*workroom)->address + sync::sheet_code_path(stamp.code) : std::string();
    }
    return std::optional(stamp);
}

}  // namespace truehang
