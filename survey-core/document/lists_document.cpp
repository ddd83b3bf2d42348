// SPDX-License-Identifier: Apache-2.0
#include "document/lists_document.h"

#include "document/limits.h"
#include "document/object_writer.h"
#include "document/survey_parts.h"

#include <fmt/format.h>

namespace truehang {

namespace {

constexpr std::string_view lists_format = "truehang.lists/1";
constexpr std::size_t most_listed = 1000;

void read_lists_format(ObjectReader& reader) {
    std::string format;
    reader.text("format", format, Presence::required);
    if (!format.empty() && format != lists_format) {
        reader.fault("format", fmt::format("The format must be {}, not {}.", lists_format, json_string(format)));
    }
}

/// The names of one list; a fault at one that isn't there or stood before.
class Names {
public:
    void add(ObjectReader& reader, const std::string& name) {
        if (name.empty()) {
            reader.fault("name", "What is kept in a list needs a name.");
        } else if (!seen_.insert(name).second) {
            reader.fault("name", fmt::format("{} stands in this list already.", json_string(name)));
        }
    }

private:
    std::set<std::string> seen_;
};

}  // namespace

Result<OwnLists, Faults> read_own_lists(std::string_view bytes) {
    OwnLists lists;
    Faults faults = read_whole_document(bytes, "A document of lists", [&](ObjectReader& reader) {
        read_lists_format(reader);
        Ids cloths;
        reader.objects("fabrics", document_limits::fabrics, [&](ObjectReader& item) {
            lists.fabrics.push_back(read_fabric(item));
            cloths.add(item, lists.fabrics.back().id);
        });
        Names hardware;
        reader.objects("hardware", most_listed, [&](ObjectReader& item) {
            lists.hardware.push_back(read_hardware(item));
            hardware.add(item, lists.hardware.back().name);
        });
        Names rules;
        reader.objects("rules", most_listed, [&](ObjectReader& item) {
            lists.rules.push_back(read_labelled_rules(item));
            rules.add(item, lists.rules.back().rules.name);
        });
        lists.extra = reader.rest();
    });
    if (!faults.empty()) {
        return faults;
    }
    return lists;
}

std::string write_own_lists(const OwnLists& lists) {
    JsonText out(true);
    ObjectWriter object(out, lists.extra);
    object.required_text("format", lists_format);
    const auto as_item = [](const auto& write) {
        return [write](JsonText& list, const auto& item) {
            list.begin_item();
            write(list, item);
        };
    };
    object.list("fabrics", lists.fabrics, as_item(write_fabric), true);
    object.list("hardware", lists.hardware, as_item(write_hardware), true);
    object.list("rules", lists.rules, as_item([](JsonText& list, const RulesDocument& one) {
                    ObjectWriter item(list, one.extra);
                    write_labelled_rules(item, list, one.rules);
                    item.end();
                }),
                true);
    object.end();
    return out.take() + '\n';
}

}  // namespace truehang
