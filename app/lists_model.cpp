// SPDX-License-Identifier: Apache-2.0
#include "lists_model.h"

#include "hanging_model.h"
#include "kept_lists.h"
#include "open_visit.h"
#include "own_items.h"
#include "trade_words.h"
#include "writing.h"

#include <algorithm>
#include <tuple>

namespace truehang {

namespace {

const QString cloth_kind = QStringLiteral("cloth/");
const QString hardware_kind = QStringLiteral("hardware/");
const QString rules_kind = QStringLiteral("rules/");
constexpr std::string_view own_rule = "edge_u_mm";  ///< read at each house

struct Item {
    QString key, section, name, line;
    bool removed = false;
    int place = 0;  ///< of its section
};

QString line_of(const Survey& survey, const Fabric& fabric) {
    QString line = ListsModel::tr("%1 wide").arg(shown(survey, fabric.width));
    if (fabric.role) {
        line = QStringLiteral("%1, %2").arg(says(*fabric.role), line);
    }
    return fabric.repeat.mm() > 0 ? ListsModel::tr("%1, repeat %2").arg(line, shown(survey, fabric.repeat)) : line;
}

QString line_of(const Survey& survey, Hardware hardware) {
    hardware.name.clear();
    return hardware_name(survey, hardware);
}

QString line_of(const HouseRuleEntries& rules) {
    return rules.version ? ListsModel::tr("version %1").arg(*rules.version) : QString();
}

/// By section, then by name; removed ones last.
std::vector<Item> items_of(const OwnLists& lists, const Survey& survey) {
    std::vector<Item> items;
    for (const Fabric& one : lists.fabrics) {
        const QString name = one.name.empty() ? ListsModel::tr("Cloth without a name") : shown(one.name);
        items.push_back({cloth_kind + shown(one.id), ListsModel::tr("Cloths"), name, line_of(survey, one),
                         is_removed(one.extra), 0});
    }
    for (const Hardware& one : lists.hardware) {
        items.push_back({hardware_kind + shown(one.name), ListsModel::tr("Hardware"), shown(one.name),
                         line_of(survey, one), is_removed(one.extra), 1});
    }
    for (const RulesDocument& one : lists.rules) {
        items.push_back({rules_kind + shown(one.rules.name), ListsModel::tr("House rules"), shown(one.rules.name),
                         line_of(one.rules), is_removed(one.extra), 2});
    }
    std::ranges::stable_sort(items, [](const Item& one, const Item& other) {
        return std::tuple(one.removed, one.place) != std::tuple(other.removed, other.place)
                   ? std::tuple(one.removed, one.place) < std::tuple(other.removed, other.place)
                   : one.name.localeAwareCompare(other.name) < 0;
    });
    return items;
}

bool matches(const Item& item, const QString& search) {
    const QStringList words = search.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    const QString text = item.name + QLatin1Char(' ') + item.line;
    return std::ranges::all_of(words, [&](const QString& word) { return text.contains(word, Qt::CaseInsensitive); });
}

Extra* extra_of(OwnLists& lists, const QString& item) {
    if (item.startsWith(cloth_kind)) {
        const auto found = std::ranges::find(lists.fabrics, bytes(item.mid(cloth_kind.size())), &Fabric::id);
        return found == lists.fabrics.end() ? nullptr : &found->extra;
    }
    if (item.startsWith(hardware_kind)) {
        const auto found = std::ranges::find(lists.hardware, bytes(item.mid(hardware_kind.size())), &Hardware::name);
        return found == lists.hardware.end() ? nullptr : &found->extra;
    }
    const std::string name = bytes(item.mid(rules_kind.size()));
    const auto found =
        std::ranges::find_if(lists.rules, [&](const RulesDocument& one) { return one.rules.name == name; });
    return found == lists.rules.end() ? nullptr : &found->extra;
}

}  // namespace

ListsModel::ListsModel(OpenVisit& open, KeptLists& lists, HangingModel& hanging, QObject* parent)
    : QObject(parent),
      open_(open),
      lists_(lists),
      hanging_(hanging),
      items_({"item", "section", "name", "line", "isRemoved", "spoken"}) {
    connect(&lists_, &KeptLists::changed, this, &ListsModel::show);
    connect(&open_, &OpenVisit::opened, this, [this] { say({}); });
    show();
}

void ListsModel::show() {
    QList<ShownRows::Row> rows;
    for (const Item& item : items_of(lists_.held(), open_.survey())) {
        if (matches(item, search_)) {
            const QString section = item.removed ? tr("Taken out") : item.section;
            rows.append({item.key, section, item.name, item.line, item.removed,
                         QStringLiteral("%1: %2").arg(item.name, item.line)});
        }
    }
    items_.setRows(rows);
    emit changed();
}

void ListsModel::setSearch(const QString& words) {
    if (search_ != words) {
        search_ = words;
        show();
    }
}

bool ListsModel::hasAny() const {
    const OwnLists& held = lists_.held();
    return !held.fabrics.empty() || !held.hardware.empty() || !held.rules.empty();
}

bool ListsModel::hasRemoved() const {
    const auto items = items_of(lists_.held(), open_.survey());
    return std::ranges::any_of(items, &Item::removed);
}

QString ListsModel::fault() const { return lists_.fault(); }

void ListsModel::say(const QString& said) {
    said_ = said;
    emit changed();
}

void ListsModel::keep(const std::function<bool(OwnLists&)>& into, const QString& name) {
    say({});
    lists_.change(into, [this, name] { say(tr("In your list: %1").arg(name)); });
}

void ListsModel::keepCloth(const QString& fabricId) {
    const auto& cloths = open_.survey().fabrics;
    const auto found = std::ranges::find(cloths, bytes(fabricId), &Fabric::id);
    if (found == cloths.end()) {
        return;
    }
    Fabric kept = *found;
    kept.id = open_.newId();
    const auto into = [kept](OwnLists& lists) {
        std::erase_if(lists.fabrics, [&](const Fabric& one) {
            return one.name == kept.name && one.role.has_value() == kept.role.has_value() &&
                   (!one.role || one.role->text() == kept.role->text());
        });
        lists.fabrics.push_back(kept);
        return true;
    };
    keep(into, kept.name.empty() ? tr("Cloth without a name") : shown(kept.name));
}

void ListsModel::keepHardware() {
    const Window* window = open_.window();
    const auto layer = static_cast<std::size_t>(std::max(hanging_.current(), 0));
    if (!window || layer >= window->layers.size() || !window->layers[layer].hardware) {
        return;
    }
    Hardware kept = for_another_place(*window->layers[layer].hardware);
    kept.name = bytes(hardware_name(open_.survey(), kept));
    const auto into = [kept](OwnLists& lists) {
        std::erase_if(lists.hardware, [&](const Hardware& one) { return one.name == kept.name; });
        lists.hardware.push_back(kept);
        return true;
    };
    keep(into, shown(kept.name));
}

void ListsModel::keepRules() {
    RulesDocument kept;
    kept.rules = open_.survey().rules;
    kept.rules.numbers.erase(std::string(own_rule));
    if (kept.rules.name.empty()) {
        kept.rules.name = bytes(tr("House rules of %1").arg(shown(open_.survey().title)));
    }
    const auto into = [kept](OwnLists& lists) {
        std::erase_if(lists.rules, [&](const RulesDocument& one) { return one.rules.name == kept.rules.name; });
        lists.rules.push_back(kept);
        return true;
    };
    keep(into, shown(kept.rules.name));
}

bool ListsModel::take(const QString& item) {
    if (!open_.isOpen()) {
        return false;
    }
    if (item.startsWith(hardware_kind)) {
        return hanging_.takeHardware(item.mid(hardware_kind.size()));
    }
    return item.startsWith(cloth_kind) ? takeCloth(bytes(item.mid(cloth_kind.size())))
                                       : takeRules(bytes(item.mid(rules_kind.size())));
}

bool ListsModel::takeCloth(const std::string& id) {
    const auto& cloths = lists_.held().fabrics;
    const auto found = std::ranges::find(cloths, id, &Fabric::id);
    return found != cloths.end() && open_.edit(tr("A cloth from your list: %1").arg(shown(found->name)),
                                               [own = *found, id = open_.newId()](Survey& survey) {
                                                   const auto before = survey.fabrics.size();
                                                   take_cloth(survey, own, id);
                                                   return survey.fabrics.size() > before;
                                               });
}

bool ListsModel::takeRules(const std::string& name) {
    const auto& held = lists_.held().rules;
    const auto found = std::ranges::find_if(held, [&](const RulesDocument& one) { return one.rules.name == name; });
    return found != held.end() &&
           open_.edit(tr("House rules from your list: %1").arg(shown(name)), [own = found->rules](Survey& survey) {
               HouseRuleEntries rules = own;
               const auto edge = survey.rules.numbers.find(std::string(own_rule));
               if (edge != survey.rules.numbers.end()) {
                   rules.numbers.insert(*edge);
               }
               survey.rules = std::move(rules);
               return true;
           });
}

void ListsModel::setRemoved(const QString& item, bool removed) {
    lists_.change([&](OwnLists& lists) {
        Extra* extra = extra_of(lists, item);
        if (extra) {
            set_removed(*extra, removed);
        }
        return extra != nullptr;
    });
}

void ListsModel::remove(const QString& item) { setRemoved(item, true); }
void ListsModel::bringBack(const QString& item) { setRemoved(item, false); }

void ListsModel::emptyRemoved() {
    lists_.change([](OwnLists& lists) {
        const auto removed = [](const auto& one) { return is_removed(one.extra); };
        return std::erase_if(lists.fabrics, removed) + std::erase_if(lists.hardware, removed) +
                   std::erase_if(lists.rules, removed) >
               0;
    });
}

}  // namespace truehang
