// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/object_reader.h"

#include <set>
#include <string>
#include <string_view>

// How the parts of a survey are read from their objects; survey_reader.cpp puts them together.

namespace truehang {

/// The ids of one list as they are met. The second of a pair is at fault.
class Ids {
public:
    /// A fault at the reader's "id" where `id` stood before; an empty id is no id.
    void add(ObjectReader& reader, const std::string& id);
    [[nodiscard]] bool contains(std::string_view id) const { return seen_.contains(id); }
    [[nodiscard]] std::size_t size() const { return seen_.size(); }

private:
    std::set<std::string, std::less<>> seen_;
};

/// What a treatment may name, and whether every fabric said what it is called.
struct FabricNames {
    Ids ids;
    bool complete = true;
};

[[nodiscard]] Fabric read_fabric(ObjectReader& reader);
[[nodiscard]] HouseRuleEntries read_rules(ObjectReader& reader);
[[nodiscard]] Reading read_reading(ObjectReader& reader, Shape shape);
[[nodiscard]] Obstruction read_obstruction(ObjectReader& reader);
[[nodiscard]] Photo read_photo(ObjectReader& reader);
[[nodiscard]] Hardware read_hardware(ObjectReader& reader);
[[nodiscard]] Treatment read_treatment(ObjectReader& reader, const FabricNames& fabrics);

}  // namespace truehang
