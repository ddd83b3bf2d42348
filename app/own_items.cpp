// SPDX-License-Identifier: Apache-2.0
#include "own_items.h"

#include "kept_lists.h"
#include "trade_words.h"
#include "writing.h"

#include <QCoreApplication>
#include <algorithm>
#include <vector>

namespace truehang {

namespace {

const QString own_prefix = QStringLiteral("own:");

bool suits(const Fabric& fabric, const QString& field) {
    const auto is = [&](FabricRole role) { return fabric.role && fabric.role->is(role); };
    if (field == QStringLiteral("fabric")) {
        return !fabric.role || is(FabricRole::face) || is(FabricRole::sheer);
    }
    return field == QStringLiteral("interlining")    ? is(FabricRole::interlining)
           : field == QStringLiteral("secondLining") ? is(FabricRole::lining) || is(FabricRole::interlining)
                                                     : is(FabricRole::lining);
}

bool is_same(const Fabric& one, const Fabric& other) {
    const auto word = [](const Fabric& fabric) { return fabric.role ? fabric.role->text() : std::string(); };
    return one.name == other.name && one.width == other.width && word(one) == word(other);
}

void sort_and_shorten(QVariantList& choices) {
    const auto says = [](const QVariant& one) { return one.toMap().value(QStringLiteral("says")).toString(); };
    std::ranges::sort(choices, [&](const QVariant& one, const QVariant& other) {
        return says(one).localeAwareCompare(says(other)) < 0;
    });
    if (choices.size() > most_own_choices) {
        choices.clear();
    }
}

}  // namespace

QVariantList own_cloth_choices(const OwnLists& lists, const Survey& survey, const QString& field) {
    QVariantList choices;
    for (const Fabric& own : lists.fabrics) {
        const bool is_there = std::ranges::any_of(survey.fabrics, [&](const Fabric& f) { return is_same(f, own); });
        if (!is_removed(own.extra) && suits(own, field) && !is_there) {
            choices.append(choice(own_prefix + shown(own.id), shown(own.name.empty() ? own.id : own.name)));
        }
    }
    sort_and_shorten(choices);
    return choices;
}

std::string own_cloth_of(const QString& word) {
    return word.startsWith(own_prefix) ? bytes(word.mid(own_prefix.size())) : std::string();
}

std::string take_cloth(Survey& survey, const Fabric& own, const std::string& new_id) {
    const auto same = std::ranges::find_if(survey.fabrics, [&](const Fabric& fabric) { return is_same(fabric, own); });
    if (same != survey.fabrics.end()) {
        return same->id;
    }
    Fabric taken = own;
    set_removed(taken.extra, false);
    taken.id = new_id;
    survey.fabrics.push_back(taken);
    return new_id;
}

QVariantList own_hardware_choices(const OwnLists& lists) {
    QVariantList choices;
    for (const Hardware& own : lists.hardware) {
        if (!is_removed(own.extra)) {
            choices.append(choice(shown(own.name), shown(own.name)));
        }
    }
    sort_and_shorten(choices);
    return choices;
}

const Hardware* find_hardware(const OwnLists& lists, const std::string& name) {
    const auto found = std::ranges::find(lists.hardware, name, &Hardware::name);
    return found == lists.hardware.end() || is_removed(found->extra) ? nullptr : &*found;
}

QString hardware_name(const Survey& survey, const Hardware& hardware) {
    if (!hardware.name.empty()) {
        return shown(hardware.name);
    }
    QString name = hardware.kind ? says(*hardware.kind) : says(HardwareKind::pole);
    if (hardware.diameter) {
        name = QCoreApplication::translate("hardware", "%1, %2 across").arg(name, shown(survey, hardware.diameter));
    }
    if (hardware.length) {
        name = QCoreApplication::translate("hardware", "%1, %2 long").arg(name, shown(survey, hardware.length));
    }
    return name;
}

Hardware for_another_place(Hardware hardware) {
    hardware.left.reset();
    hardware.stage.reset();
    set_removed(hardware.extra, false);
    return hardware;
}

std::vector<Layer> for_another_window(const std::vector<Layer>& layers, const std::function<std::string()>& new_id) {
    std::vector<Layer> copied = layers;
    for (Layer& layer : copied) {
        if (!layer.id.empty()) {
            layer.id = new_id();
        }
        if (layer.hardware) {
            layer.hardware = for_another_place(*layer.hardware);
        }
        if (layer.treatment) {
            layer.treatment->decided.reset();
        }
    }
    return copied;
}

}  // namespace truehang
