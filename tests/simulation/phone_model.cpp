// SPDX-License-Identifier: Apache-2.0
#include "phone_model.h"

#include "merge/merge.h"
#include "protocol/digest.h"

#include <algorithm>
#include <ranges>

namespace truehang::sync::simulation {
namespace {

constexpr Pieces pieces{1000, 700};
constexpr std::size_t most_parents = 8;  ///< fewer than a document may tell: harder, and less to write and to read
constexpr std::size_t kept_with_bytes = 2;

}  // namespace

PhoneModel::PhoneModel(std::string name, Bug bug, World world)
    : name_(std::move(name)), bug_(bug), world_(std::move(world)) {
    start();
}

void PhoneModel::start() {
    outbox_ = std::make_unique<Outbox>(*this, world_.clock, world_.random, Delays{}, pieces);
    outbox_->paired();
}

void PhoneModel::die() {
    outbox_.reset();
    row_to_write_ = false;
    ++life_;
}

void PhoneModel::keep(Survey visit, const std::map<std::string, std::string>& photos) {
    if (disk_.revision == 0 && visit.parents) {  // it came as a file
        for (const auto& parent : std::views::reverse(*visit.parents)) {
            disk_.parents.push_back({parent, ""});
        }
    }
    visit.parents.reset();
    disk_.visit = std::move(visit);
    ++disk_.revision;
    if (bug_ == Bug::row_in_its_own_commit) {
        row_to_write_ = true;
    } else {
        disk_.row = {true, 0, {}};
    }
    for (const auto& [sha256, bytes] : photos) {
        disk_.photos[sha256] = {bytes, {true, 0, {}}};
    }
}

void PhoneModel::finish_edit() {
    if (std::exchange(row_to_write_, false)) {
        disk_.row = {true, 0, {}};
    }
}

std::vector<std::string> PhoneModel::parents() const {
    std::vector<std::string> parents;
    for (const auto& [revision, sending] : std::views::reverse(disk_.sending)) {
        if (sending.gone_out && revision < disk_.revision && parents.size() < most_parents / 2) {
            parents.push_back(sending.sha256);
        }
    }
    for (const auto& parent : std::views::reverse(disk_.parents)) {
        if (parents.size() < most_parents) {
            parents.push_back(parent.sha256);
        }
    }
    return parents;
}

const PhoneModel::Sending& PhoneModel::document_to_send() {
    const auto [sending, is_new] = disk_.sending.try_emplace(disk_.revision);
    if (is_new) {
        Survey survey = disk_.visit;
        survey.revision = disk_.revision;
        survey.parents = parents();
        sending->second.bytes = write_survey(survey, false);
        sending->second.sha256 = hex(sha256(sending->second.bytes));
    }
    return sending->second;
}

std::string PhoneModel::bytes_of(const std::string& sha256) const {
    const auto parent =
        std::ranges::find_if(disk_.parents, [&](const Parent& of) { return of.sha256 == sha256 && !of.bytes.empty(); });
    if (parent != disk_.parents.end()) {
        return parent->bytes;
    }
    const auto sending =
        std::ranges::find_if(disk_.sending, [&](const auto& of) { return of.second.sha256 == sha256; });
    return sending != disk_.sending.end() ? sending->second.bytes : std::string();
}

std::vector<Item> PhoneModel::pending() {
    std::vector<Item> items;
    if (disk_.row.waiting) {
        const auto& document = document_to_send();
        Item item;
        item.key = "survey/" + std::to_string(disk_.revision);
        item.survey = disk_.visit.id;
        item.revision = disk_.revision;
        item.sha256 = document.sha256;
        item.bytes = static_cast<long long>(document.bytes.size());
        item.attempts = disk_.row.tries;
        item.not_before = disk_.row.until;
        for (const auto& parent : parents()) {
            if (!bytes_of(parent).empty()) {
                item.parents_here.push_back(parent);
            }
        }
        items.push_back(std::move(item));
    }
    for (const auto& [sha256, photo] : disk_.photos) {
        if (photo.row.waiting) {
            Item item;
            item.kind = ItemKind::photo;
            item.key = "photo/" + sha256;
            item.sha256 = sha256;
            item.bytes = static_cast<long long>(photo.bytes.size());
            item.attempts = photo.row.tries;
            item.not_before = photo.row.until;
            items.push_back(std::move(item));
        }
    }
    return items;
}

std::optional<std::string> PhoneModel::take_body(const Request& request) {
    if (!request.body_of) {
        return std::string();
    }
    if (request.body_of->kind == ItemKind::photo) {
        const auto& bytes = disk_.photos.at(request.body_of->sha256).bytes;
        return request.range ? bytes.substr(static_cast<std::size_t>(request.range->from),
                                            static_cast<std::size_t>(request.range->bytes))
                             : bytes;
    }
    const auto sending = disk_.sending.find(disk_.revision);
    if (sending == disk_.sending.end() || sending->second.sha256 != request.body_of->sha256) {
        return std::nullopt;
    }
    sending->second.gone_out = bug_ != Bug::unheard_is_no_parent;
    return sending->second.bytes;
}

PhoneModel::Row& PhoneModel::row_of(const Item& item) {
    return item.kind == ItemKind::survey ? disk_.row : disk_.photos.at(item.sha256).row;
}

void PhoneModel::confirm(const Item& item, const Receipt& receipt) {
    static_cast<void>(receipt);
    world_.confirmed(item);
    if (item.kind == ItemKind::survey) {
        if (const auto sent = disk_.sending.find(item.revision); sent != disk_.sending.end()) {
            put_parent(sent->second.bytes);
        }
        disk_.sending.erase(disk_.sending.begin(), disk_.sending.upper_bound(item.revision));
    }
    if (item.kind == ItemKind::photo || item.revision == disk_.revision || bug_ == Bug::newest_confirmed) {
        row_of(item) = {};
    }
}

void PhoneModel::refuse(const Item& item, const Refusal& refusal) {
    refusals_.push_back(item.key + ": " + refusal.why);
    if (item.kind == ItemKind::photo || item.revision == disk_.revision) {
        row_of(item) = {};
    }
}

void PhoneModel::postpone(const Item& item, int, Time not_before, const std::string&) {
    auto& row = row_of(item);
    if (row.waiting) {
        row.until = not_before;
        ++row.tries;
    }
}

void PhoneModel::put_parent(const std::string& bytes) {
    const auto digest = hex(sha256(bytes));
    std::erase_if(disk_.parents, [&](const Parent& parent) { return parent.sha256 == digest; });
    disk_.parents.push_back({digest, bytes});
    for (std::size_t i = 0; i + kept_with_bytes < disk_.parents.size(); ++i) {
        disk_.parents[i].bytes.clear();
    }
}

/// What went out before is older than what is put above it now.
void PhoneModel::settle_gone_out() {
    for (auto& [revision, sending] : disk_.sending) {
        const auto& digest = sending.sha256;
        const bool known =
            std::ranges::any_of(disk_.parents, [&](const Parent& parent) { return parent.sha256 == digest; });
        if (sending.gone_out && !known) {
            disk_.parents.push_back({digest, ""});
        }
        sending.gone_out = false;
    }
}

void PhoneModel::add_parent(const std::string& bytes) {
    settle_gone_out();
    put_parent(bytes);
    disk_.revision += disk_.row.waiting && disk_.sending.contains(disk_.revision) ? 1 : 0;
}

void PhoneModel::bring_together(const Item& item, const WhatIsThere& there, const std::string& theirs,
                                const std::string& common) {
    const auto base = read_survey(common.empty() ? bytes_of(there.common_sha256) : common);
    const auto other = read_survey(theirs);
    if (!base || !other) {
        return refuse(item, {"What both were made from isn’t on this device.", ""});
    }
    auto merged = bug_ == Bug::theirs_taken ? Result<Survey, Faults>(*other) : merge(*base, disk_.visit, *other);
    if (!merged) {
        return refuse(item, {"The two can’t be put together: " + merged.error().front().text, ""});
    }
    ++put_together_;
    disk_.visit = std::move(merged).value();
    settle_gone_out();
    put_parent(theirs);
    disk_.revision = std::max(disk_.revision + 1, there.newest.revision) + 1;
    disk_.row = {bug_ != Bug::put_together_not_sent, 0, {}};
}

}  // namespace truehang::sync::simulation
