// SPDX-License-Identifier: Apache-2.0
#include "../../pseudo/pseudo.h"
#include "sheet/sheets.h"
#include "sheet/words.h"
#include "sheet/working_words.h"
#include "survey/stations.h"
#include "units/saying.h"
#include "windows.h"

#include <algorithm>
#include <cctype>
#include <set>
#include <string>
#include <vector>

// What is said in other languages: nothing is left in English, and the figures stay what they are.

namespace truehang::test {
namespace {

constexpr std::array demo_surveys{"net-store", "pilot-house", "sail-loft"};

Survey demo(const std::string& name) { return read_survey(file_text("demo-surveys/" + name + ".json")).value(); }

/// Speaks for as long as it lives.
class Speaking {
public:
    explicit Speaking(const Language& language) { speak(&language); }
    ~Speaking() { speak(nullptr); }
    Speaking(const Speaking&) = delete;
    Speaking& operator=(const Speaking&) = delete;
};

Language language(const std::string& table) {
    auto read = Language::read(table);
    EXPECT_TRUE(read.ok()) << read.error().where << ": " << read.error().text;
    return std::move(read).value();
}

void add_part(std::vector<std::string>& texts, const SheetPart& part) {
    if (const auto* block = std::get_if<SheetBlock>(&part)) {
        texts.insert(texts.end(), {block->title, block->note});
        texts.insert(texts.end(), block->columns.begin(), block->columns.end());
        for (const SheetRow& row : block->rows) {
            std::ranges::transform(row.cells, std::back_inserter(texts), &SheetCell::text);
        }
    } else if (const auto* words = std::get_if<SheetWords>(&part)) {
        texts.push_back(words->title);
        texts.insert(texts.end(), words->lines.begin(), words->lines.end());
    } else if (const auto* minds = std::get_if<SheetMinds>(&part)) {
        texts.push_back(minds->title);
        for (const SheetMind& mind : minds->minds) {
            texts.insert(texts.end(), {mind.word, mind.text});
        }
    } else if (const auto* drawn = std::get_if<SheetDrawing>(&part)) {
        texts.insert(texts.end(), {drawn->drawing.title, drawn->drawing.description});
        std::ranges::transform(drawn->drawing.labels, std::back_inserter(texts), &Label::text);
    } else if (const auto* workings = std::get_if<SheetWorkings>(&part)) {
        texts.push_back(workings->title);
        for (const SheetWorking& working : workings->workings) {
            texts.push_back(working.title);
            texts.insert(texts.end(), working.steps.begin(), working.steps.end());
        }
    }
}

/// Everything that is said of a survey: flags, what is asked next, every sheet with its drawings.
std::vector<std::string> all_said(const Survey& survey) {
    std::vector<std::string> texts;
    const Figures figures = work_out(survey);
    for (const WindowFigures& window : figures.windows) {
        std::ranges::transform(window.flags, std::back_inserter(texts), &Flag::text);
        texts.push_back(window.next ? window.next->why : window.nothing_more);
    }
    for (const SheetKind kind :
         {SheetKind::measure, SheetKind::cutting, SheetKind::making, SheetKind::hanging, SheetKind::light}) {
        SheetsAsked asked;
        asked.kind = kind;
        for (const Sheet& sheet : sheets_of(survey, figures, asked, {})) {
            texts.insert(texts.end(), {title_of(kind), sheet.title, sheet.provisional, sheet.corner});
            texts.insert(texts.end(), sheet.heading.begin(), sheet.heading.end());
            std::ranges::transform(sheet.first, std::back_inserter(texts), &SheetMind::text);
            for (const SheetPart& part : sheet.parts) {
                add_part(texts, part);
            }
        }
    }
    return texts;
}

std::string lower(std::string text) {
    std::ranges::transform(text, text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

/// What somebody typed, longest first: it is never translated.
std::vector<std::string> typed_names(const Survey& survey) {
    std::set<std::string> names{survey.title, survey.title.substr(0, survey.title.find(',')), survey.measured_by};
    if (survey.client) {
        names.insert(survey.client->name);
    }
    if (survey.site) {
        names.insert(survey.site->address);
    }
    for (const Fabric& fabric : survey.fabrics) {
        names.insert({fabric.id, fabric.name, short_name(fabric)});
    }
    for (const Room& room : survey.rooms) {
        names.insert({room.id, room.name, room.use, room.wall});
        for (const Window& window : room.windows) {
            names.insert({window.id, window.name, window.notes});
            for (const Layer& layer : window.layers) {
                names.insert(layer.id);
            }
            for (const Obstruction& obstruction : window.obstructions) {
                names.insert(obstruction.note);
            }
            for (const Reading& reading : window.readings) {
                names.insert(reading.typed);
            }
        }
    }
    names.erase("");
    std::vector<std::string> longest(names.begin(), names.end());
    std::ranges::stable_sort(longest, std::greater{}, &std::string::size);
    return longest;
}

/// A text without what stands in brackets and without names.
std::string bare(const std::string& text, const std::vector<std::string>& names) {
    std::string left;
    int depth = 0;
    for (const char c : text) {
        depth -= c == ']' ? 1 : 0;
        left += depth == 0 ? c : ' ';
        depth += c == '[' ? 1 : 0;
    }
    left = lower(left);
    for (const std::string& name : names) {
        const std::string low = lower(name);
        for (std::size_t at = left.find(low); at != std::string::npos; at = left.find(low)) {
            left.replace(at, low.size(), " ");
        }
    }
    return left;
}

bool has_a_word(const std::string& text) {
    int letters = 0;
    for (const char c : text) {
        letters = std::isalpha(static_cast<unsigned char>(c)) != 0 ? letters + 1 : 0;
        if (letters >= 3) {
            return true;
        }
    }
    return false;
}

TEST(Spoken, NothingIsLeftInEnglish) {
    const Language other = language(pseudo_table(file_text("survey-core/words/de.txt")));
    std::set<std::string> left;
    for (const char* name : demo_surveys) {
        const Survey survey = demo(name);
        const auto names = typed_names(survey);
        const Speaking speaking(other);
        for (const std::string& text : all_said(survey)) {
            if (has_a_word(bare(text, names))) {
                left.insert(text);
            }
        }
    }
    std::string all;
    for (const std::string& text : left) {
        all += text + "\n";
    }
    EXPECT_EQ(all, "");
}

TEST(Spoken, FiguresAreTheSameInEveryLanguage) {
    const Language german = language(file_text("survey-core/words/de.txt"));
    for (const char* name : demo_surveys) {
        const Survey survey = demo(name);
        const Figures english = work_out(survey);
        const Speaking speaking(german);
        const Figures spoken_figures = work_out(survey);
        const EnglishHere document;
        ASSERT_EQ(english.windows.size(), spoken_figures.windows.size());
        for (std::size_t i = 0; i < english.windows.size(); ++i) {
            const auto& one = english.windows[i];
            const auto& other = spoken_figures.windows[i];
            ASSERT_EQ(one.flags.size(), other.flags.size()) << one.id;
            for (std::size_t f = 0; f < one.flags.size(); ++f) {
                EXPECT_EQ(one.flags[f].code, other.flags[f].code);
                EXPECT_NE(one.flags[f].text, other.flags[f].text);
            }
            ASSERT_EQ(one.layers.size(), other.layers.size());
            for (std::size_t l = 0; l < one.layers.size(); ++l) {
                ASSERT_EQ(one.layers[l].finished.has_value(), other.layers[l].finished.has_value());
                if (one.layers[l].finished) {
                    EXPECT_EQ(one.layers[l].finished->drop, other.layers[l].finished->drop);
                    EXPECT_EQ(one.layers[l].finished->width, other.layers[l].finished->width);
                }
            }
        }
    }
}

// DIN 5008, dates in letters: the day with its dot, the month’s name, the year.
TEST(Spoken, AGermanDayHasItsDot) {
    const Language german = language(file_text("survey-core/words/de.txt"));
    const Speaking speaking(german);
    EXPECT_EQ(day_text("2026-03-14T10:20:00+00:00"), "14. März 2026");
    EXPECT_EQ(day_text("2026-12-01T10:20:00+00:00"), "1. Dezember 2026");
}

TEST(Spoken, LeftAndRightStayTheirOwnSides) {
    const Language german = language(file_text("survey-core/words/de.txt"));
    const Speaking speaking(german);
    for (const Shape shape : {Shape::recess, Shape::door, Shape::bay, Shape::arch, Shape::gable, Shape::corner}) {
        for (const Station& station : stations_of(shape)) {
            const std::string english = lower(std::string(station.says));
            const std::string said = lower(station_words(station));
            EXPECT_EQ(english.find("left") != std::string::npos, said.find("link") != std::string::npos) << english;
            const bool right = said.find("rechts") != std::string::npos || said.find("rechte") != std::string::npos;
            EXPECT_EQ(english.find("right") != std::string::npos, right) << english;
        }
    }
}

}  // namespace
}  // namespace truehang::test
