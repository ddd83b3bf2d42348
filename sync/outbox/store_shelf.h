// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/outbox.h"
#include "protocol/questions.h"
#include "store/async_store.h"
#include "store/store.h"
#include "units/result.h"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace truehang::sync {

/// An item of the shelf from a row of the store; `document` is the survey's bytes to send, null for a photo.
[[nodiscard]] Item item_from_store(const OutboxItem& row, const DocumentToSend* document);
[[nodiscard]] Item answer_from_store(const OutboxItem& row, const VisitAnswer& answer);
/// The row of the store that an item came from, as far as `confirm`, `refuse`, `postpone` and `send_again` look at it.
[[nodiscard]] OutboxItem row_of(const Item& item);
/// The receipt as the store keeps it: the protocol's record.
[[nodiscard]] std::string receipt_record(const Item& item, const Receipt& receipt);

/// Keeps what was asked and answered, as it came after the cursor `from`.
[[nodiscard]] Result<Done> keep_questions(Store& store, const QuestionEntries& came, const std::string& from);

/// What was there instead, as the store notes it.
[[nodiscard]] MetRevision met_revision(const WhatIsThere& there, const std::string& bytes);
/// Keeps a photo that was fetched; the workroom has it, so that it isn’t sent.
[[nodiscard]] Result<Done> keep_fetched_photo(Store& store, const std::string& sha256, const std::string& bytes,
                                              const std::string& media_type);

/// Of a survey, its parents whose bytes the store has.
[[nodiscard]] std::vector<std::string> parents_here(Store& store, const std::string& survey);

/// The app's store as the outbox's shelf. All calls and answers on the caller's side of the store; what is pending is a
/// snapshot that `refresh` renews.
class StoreShelf final : public OutboxShelf {
public:
    struct Told {
        /// The snapshot was renewed: ask the outbox for its next step.
        std::function<void()> refreshed = [] {};
        /// The store couldn't keep what became of the item; it is still pending there: `Outbox::take_up_again(key)`.
        std::function<void(const std::string& key, const Error& error)> not_kept = [](const std::string&,
                                                                                      const Error&) {};
    };

    /// `store` must outlive the shelf; answers that come after its end are dropped.
    StoreShelf(AsyncStore& store, Told told);
    ~StoreShelf() override;
    StoreShelf(const StoreShelf&) = delete;
    StoreShelf& operator=(const StoreShelf&) = delete;

    /// Reads what is pending. Call it at the start and after every edit, photo and `send_again`.
    void refresh();

    /// The bytes to send for a request's `body_of`. `conflict` where the visit was edited since the snapshot (its newer
    /// revision is pending then), else what the store says.
    void bytes_of(const Item& item, std::function<void(Result<std::string>)> then);

    [[nodiscard]] std::vector<Item> pending() override { return *snapshot_; }
    void confirm(const Item& item, const Receipt& receipt) override;
    void bring_together(const Item& item, const WhatIsThere& there, const std::string& theirs,
                        const std::string& common) override;
    void refuse(const Item& item, const Refusal& refusal) override;
    void postpone(const Item& item, int attempts, Time not_before, const std::string& why) override;

private:
    void keep(const Item& item, std::function<Result<Done>(Store&, const OutboxItem&)> work);

    AsyncStore& store_;
    Told told_;
    std::shared_ptr<std::vector<Item>> snapshot_;  ///< also tells late answers whether the shelf is still there
};

}  // namespace truehang::sync
