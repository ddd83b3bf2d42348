// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

// The order of a list's items by what they are known by. A list's own order is the base's, then what was added, by id;
// another order is told by its core: the shortest beginning after which the rest stands in that own order. A core stays
// what it is when items are added to a list or taken out that it doesn't name.

namespace truehang::merging {

using Keys = std::vector<std::string>;

/// The keys in their own order: those of `base` as they stand there, then the others, the shorter first, then by bytes.
[[nodiscard]] Keys own_order(const Keys& base, Keys keys);

/// The core of an order; empty where it is the list's own.
[[nodiscard]] Keys core_of(const Keys& base, const Keys& order);

/// The keys in the order that a core tells: those of the core, then the rest in their own order.
[[nodiscard]] Keys in_order(const Keys& base, const Keys& core, const Keys& keys);

}  // namespace truehang::merging
