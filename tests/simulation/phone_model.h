// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "faults.h"

#include "document/document.h"
#include "outbox/outbox.h"

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

// A phone: the outbox as it is in the app, and what the store on its disk does, in memory. Each function that changes
// the disk is one transaction, and on the disk when it returns.

namespace truehang::sync::simulation {

class PhoneModel final : public OutboxShelf {
public:
    struct World {
        Outbox::Clock clock;  ///< the phone's own, which may jump
        Outbox::Random random;
        std::function<void(const Item&)> confirmed;  ///< a receipt is about to be kept
    };
    PhoneModel(std::string name, Bug bug, World world);

    /// The program begins: what isn't on the disk is gone.
    void start();
    void die();
    /// Counted up at each end: what was meant for an earlier life isn't for this one.
    [[nodiscard]] int life() const { return life_; }
    [[nodiscard]] bool alive() const { return outbox_ != nullptr; }
    [[nodiscard]] Outbox& outbox() { return *outbox_; }

    [[nodiscard]] const std::string& name() const { return name_; }
    [[nodiscard]] const Survey& visit() const { return disk_.visit; }
    /// One edit, with the photos that it adds, by digest.
    void keep(Survey visit, const std::map<std::string, std::string>& photos);
    /// What an edit does after its commit, where it does more.
    void finish_edit();
    /// Others have this document too.
    void add_parent(const std::string& bytes);
    [[nodiscard]] std::vector<std::string> parents() const;

    /// The bytes of a request, which go out now; nothing where the item was edited since.
    [[nodiscard]] std::optional<std::string> take_body(const Request& request);

    [[nodiscard]] const std::vector<std::string>& refusals() const { return refusals_; }
    [[nodiscard]] bool all_sent() { return pending().empty(); }
    [[nodiscard]] int put_together() const { return put_together_; }

    [[nodiscard]] std::vector<Item> pending() override;
    void confirm(const Item& item, const Receipt& receipt) override;
    void refuse(const Item& item, const Refusal& refusal) override;
    void bring_together(const Item& item, const WhatIsThere& there, const std::string& theirs,
                        const std::string& common) override;
    void postpone(const Item& item, int attempts, Time not_before, const std::string& why) override;

private:
    struct Row {
        bool waiting = false;
        int tries = 0;
        Time until{};
    };
    struct Sending {
        std::string sha256;
        std::string bytes;
        bool gone_out = false;
    };
    struct Parent {
        std::string sha256;
        std::string bytes;  ///< empty: only its digest is kept
    };
    struct PhotoRow {
        std::string bytes;
        Row row;
    };
    /// What outlives the program.
    struct Disk {
        Survey visit;
        long long revision = 0;
        Row row;
        std::map<long long, Sending> sending;    ///< by revision
        std::vector<Parent> parents;             ///< oldest first
        std::map<std::string, PhotoRow> photos;  ///< by digest
    };
    [[nodiscard]] const Sending& document_to_send();
    [[nodiscard]] Row& row_of(const Item& item);
    [[nodiscard]] std::string bytes_of(const std::string& sha256) const;
    void put_parent(const std::string& bytes);
    void settle_gone_out();

    std::string name_;
    Bug bug_;
    World world_;
    Disk disk_;
    int life_ = 0;
    bool row_to_write_ = false;  ///< of `row_in_its_own_commit`
    std::unique_ptr<Outbox> outbox_;
    std::vector<std::string> refusals_;
    int put_together_ = 0;
};

}  // namespace truehang::sync::simulation
