// SPDX-License-Identifier: Apache-2.0
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <functional>

using namespace truehang::sync::test;
using Json = nlohmann::ordered_json;

namespace {

const std::string contract = TRUEHANG_SOURCE_DIR "/tests/reference/contract/";

Outcome figures_of(const std::string& document) { return run_program({TRUEHANG_WORKROOM, "figures", "-"}, document); }

/// Says where `actual` lacks something of `expected`; numbers to within the example's last decimal.
void compare(const Json& expected, const Json& actual, const std::string& at) {
    if (expected.is_number()) {
        ASSERT_TRUE(actual.is_number()) << at;
        EXPECT_NEAR(expected.get<double>(), actual.get<double>(), 0.0051) << at;
    } else if (expected.is_object()) {
        for (const auto& [key, value] : expected.items()) {
            ASSERT_TRUE(actual.contains(key)) << at << "/" << key;
            compare(value, actual.at(key), at + "/" + key);
        }
    } else if (expected.is_array() && at.ends_with("/trace")) {
        for (const auto& trace : expected) {  // the example shows one of them
            const auto found = std::find_if(actual.begin(), actual.end(), [&](const Json& other) {
                return other.at("figure") == trace.at("figure");
            });
            ASSERT_NE(found, actual.end()) << at;
            compare(trace, *found, at + "/" + trace.at("figure").get<std::string>());
        }
    } else if (expected.is_array()) {
        ASSERT_EQ(expected.size(), actual.size()) << at << " " << actual;
        for (std::size_t i = 0; i < expected.size(); ++i) {
            compare(expected[i], actual[i], at + "/" + std::to_string(i));
        }
    } else {
        EXPECT_EQ(expected, actual) << at;
    }
}

Json example() { return Json::parse(file_text(contract + "survey.example.json")); }

struct Malformed {
    const char* what;
    std::string pointer;  ///< of a fault that must be named
    std::function<void(Json&)> spoil;
};

}  // namespace

// tests/reference/contract: the worked example of the survey and figures documents.
TEST(FiguresCommand, givesTheWorkedExample) {
    const auto outcome = run_program({TRUEHANG_WORKROOM, "figures", contract + "survey.example.json"});
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    compare(Json::parse(file_text(contract + "figures.example.json")), Json::parse(outcome.out), "");
}

TEST(FiguresCommand, readsStandardInputTheSame) {
    const auto document = file_text(contract + "survey.example.json");
    const auto outcome = figures_of(document);
    EXPECT_EQ(outcome.exit_code, 0);
    EXPECT_EQ(outcome.out, run_program({TRUEHANG_WORKROOM, "figures", contract + "survey.example.json"}).out);
}

TEST(FiguresCommand, needsNoDisplayAndNoHome) {
    const auto outcome = run_program({"env", "-i", TRUEHANG_WORKROOM, "figures", contract + "survey.example.json"});
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
}

// What the contract calls malformed, one by one.
TEST(FiguresCommand, refusesWhatIsMalformedAndSaysWhere) {
    const std::string window = "/rooms/0/windows/0";
    const auto in = [](const std::string& pointer, const Json& value) {
        return [pointer, value](Json& survey) { survey[Json::json_pointer(pointer)] = value; };
    };
    const std::vector<Malformed> cases{
        {"another format", "/format", in("/format", "truehang.survey/2")},
        {"no id", "/id", [](Json& survey) { survey.erase("id"); }},
        {"no rooms", "/rooms", [](Json& survey) { survey.erase("rooms"); }},
        {"rooms of a wrong type", "/rooms", in("/rooms", Json::object())},
        {"a reading's value of a wrong type", window + "/readings/0/value_mm",
         in(window + "/readings/0/value_mm", "1242")},
        {"a length below its range", window + "/readings/0/value_mm", in(window + "/readings/0/value_mm", -1)},
        {"a length above its range", window + "/readings/0/value_mm", in(window + "/readings/0/value_mm", 100000.5)},
        {"no cloth within the selvedges", "/fabrics/0/width_mm", in("/fabrics/0/width_mm", 20)},
        {"shrinkage above its range", "/fabrics/0/shrinkage_pct", in("/fabrics/0/shrinkage_pct", 50.5)},
        {"a latitude that isn't one", "/site/latitude", in("/site/latitude", 90.1)},
        {"a bearing that isn't one", window + "/bearing_deg", in(window + "/bearing_deg", 360)},
        {"a time that can't be read", "/measured_at", in("/measured_at", "14 March 2026")},
        {"two readings of one id", window + "/readings/1/id", in(window + "/readings/1/id", "m1")},
        {"a fabric that isn't there", window + "/treatment/fabric", in(window + "/treatment/fabric", "velvet")},
    };
    for (const auto& malformed : cases) {
        auto survey = example();
        malformed.spoil(survey);
        const auto outcome = figures_of(survey.dump());
        EXPECT_EQ(outcome.exit_code, 2) << malformed.what;
        EXPECT_EQ(outcome.out, "") << malformed.what;
        EXPECT_NE(outcome.err.find("\"" + malformed.pointer + "\": "), std::string::npos) << malformed.what << "\n"
                                                                                          << outcome.err;
    }
}

TEST(FiguresCommand, refusesWhatIsNoDocumentAtAll) {
    const auto deep = std::string(200, '[') + std::string(200, ']');
    for (const auto& text : {std::string(), std::string("{"), std::string("[]"), std::string("{\"id\": \"\xff\"}"),
                             deep, std::string(4 * 1024 * 1024 + 1, ' ')}) {
        const auto outcome = figures_of(text);
        EXPECT_EQ(outcome.exit_code, 2) << text.substr(0, 40);
        EXPECT_EQ(outcome.out, "");
        EXPECT_TRUE(outcome.err.starts_with("\"")) << outcome.err;
    }
}

TEST(FiguresCommand, saysAllFaultsInOneGoALineEach) {
    auto survey = example();
    survey["measured_at"] = "soon";
    survey["fabrics"][0]["shrinkage_pct"] = 99;
    const auto outcome = figures_of(survey.dump());
    EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 2) << outcome.err;
}

TEST(FiguresCommand, saysThatAFileIsntThere) {
    const auto outcome = run_program({TRUEHANG_WORKROOM, "figures", "/nowhere/survey.json"});
    EXPECT_EQ(outcome.exit_code, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1) << outcome.err;
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "figures", "/"}).exit_code, 2);
}

TEST(FiguresCommand, usedWrongly) {
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM}).exit_code, 2);
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "figures"}).exit_code, 2);
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "--help"}).exit_code, 0);
}

TEST(SheetCommand, writesOnePageThatFetchesNothing) {
    const TemporaryFolder folder;
    const auto file = folder.path() / "sheet.html";
    const auto outcome = run_program({TRUEHANG_WORKROOM, "sheet", contract + "survey.example.json", "--window",
                                      "parlour-south", "-o", file.string()});
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    const auto page = file_text(file);
    EXPECT_NE(page.find("data-figure=\"finished.drop_mm\">1992<"), std::string::npos);
    EXPECT_EQ(page.find("<link"), std::string::npos);
    EXPECT_EQ(page.find("<img"), std::string::npos);
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "sheet", contract + "survey.example.json", "--window", "none"}).exit_code,
              2);
}

// The worked example (tests/reference/contract/figures.example.json): cut drop 2240, order 4.9 m.
TEST(SheetCommand, writesEveryKindOnThePaperAndInTheUnitAskedFor) {
    const auto of_kind = [](const std::string& kind, const std::vector<std::string>& more) {
        std::vector<std::string> command{TRUEHANG_WORKROOM, "sheet", contract + "survey.example.json", "--kind", kind};
        command.insert(command.end(), more.begin(), more.end());
        return run_program(command);
    };
    const auto has = [](const Outcome& outcome, const std::string& text) {
        return outcome.exit_code == 0 && outcome.out.find(text) != std::string::npos;
    };
    EXPECT_TRUE(has(of_kind("cutting", {"--paper", "letter"}), "class=\"page-sheet paper-letter\""));
    EXPECT_TRUE(has(of_kind("cutting", {"--paper", "a4"}), "data-figure=\"rolls.sailcloth.cuts.1.length\">2240<"));
    EXPECT_TRUE(has(of_kind("making", {"--window", "parlour-south"}), "data-figure=\"cloth.cut_drop_mm\">2240<"));
    EXPECT_TRUE(has(of_kind("making", {"--unit", "in"}), "data-figure=\"cloth.cut_drop_mm\">88 1/4<"));
    EXPECT_TRUE(has(of_kind("hanging", {}), "Before drilling and climbing"));
    EXPECT_EQ(of_kind("sewing", {}).exit_code, 2);
    EXPECT_EQ(of_kind("making", {"--paper", "a5"}).exit_code, 2);
    EXPECT_EQ(of_kind("making", {"--window", "none"}).exit_code, 2);
}

TEST(SheetCommand, takesThePaperOfTheLocale) {
    // GNU C Library 2.36, locale en_US: LC_PAPER is US Letter.
    const auto page = [](const std::string& locale) {
        return run_program(
                   {"env", "-i", "LC_ALL=" + locale, TRUEHANG_WORKROOM, "sheet", contract + "survey.example.json"})
            .out;
    };
    EXPECT_NE(page("en_US.UTF-8").find("paper-letter\""), std::string::npos);
    EXPECT_NE(page("en_GB.UTF-8").find("paper-a4\""), std::string::npos);
}

TEST(CsvCommand, writesOrdersAndPieces) {
    const auto csv_of = [](const std::string& what) {
        return run_program({TRUEHANG_WORKROOM, "csv", contract + "survey.example.json", "--what", what});
    };
    EXPECT_NE(csv_of("orders").out.find(",4890,4.9,no,no\r\n"), std::string::npos);
    EXPECT_NE(csv_of("pieces").out.find(",2,2240,4480,2240,drops,2,2,"), std::string::npos);
    EXPECT_EQ(csv_of("windows").exit_code, 2);
}

TEST(TemplateCommand, refusesAStraightTopInOneLine) {
    const auto outcome =
        run_program({TRUEHANG_WORKROOM, "template", contract + "survey.example.json", "--window", "parlour-south"});
    EXPECT_EQ(outcome.exit_code, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1) << outcome.err;
}

// Places of the sun from four libraries, as tests/reference/light/README.md says.
TEST(SunCommand, printsWhereTheSunStands) {
    const auto reference = Json::parse(file_text(TRUEHANG_SOURCE_DIR "/tests/reference/light/sun_reference.json"));
    for (const auto& one : reference.at("cases")) {
        const auto outcome = run_program({TRUEHANG_WORKROOM, "sun", one.at("lat_deg").dump(),
                                          one.at("lon_deg_east").dump(), one.at("utc").get<std::string>()});
        ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
        const auto sun = Json::parse(outcome.out);
        const double altitude = sun.at("altitude_deg");
        const double azimuth = sun.at("azimuth_deg");
        EXPECT_NEAR(altitude, one.at("altitude_airless_deg"), 0.02) << one.at("name");
        const double off = std::remainder(azimuth - one.at("azimuth_deg").get<double>(), 360.0);
        EXPECT_LT(std::abs(off) * std::cos(altitude * 0.017453292519943295), 0.02) << one.at("name");
    }
}

TEST(SunCommand, refusesInOneLineWhatItCantPlace) {
    const std::string at = "2026-03-20T12:00:00Z";
    const std::vector<std::vector<std::string>> refused{{"91", "0", at},
                                                        {"-90.1", "0", at},
                                                        {"0", "180.5", at},
                                                        {"x", "0", at},
                                                        {"nan", "0", at},
                                                        {"1e3", "0", at},
                                                        {"0", "", at},
                                                        {"0", "0", "2026-03-20T12:00"},
                                                        {"0", "0", "1999-12-31T23:59:59Z"},
                                                        {"0", "0"},
                                                        {"0", "0", at, "0"},
                                                        {"0", "0", "2061-01-01T00:00:00Z"},
                                                        {"0x10", "0", at},
                                                        {"0\n0", "0", at},
                                                        {"0", "0", at + "\n\n"}};
    for (auto words : refused) {
        words.insert(words.begin(), {TRUEHANG_WORKROOM, "sun"});
        const auto outcome = run_program(words);
        EXPECT_EQ(outcome.exit_code, 2) << words[2];
        EXPECT_EQ(outcome.out, "");
        EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1) << outcome.err;
    }
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "sun", "-.5", "-.25", "2060-12-31T23:59:60Z"}).exit_code, 0);
}

// 192.0.2.1 is for documentation (RFC 5737): both get as far as finding that no such address is here.
TEST(ServeCommand, goesBeyondThisMachineOnlyWithTlsOrWhenTold) {
    const TemporaryFolder folder;
    const std::vector<std::string> beyond{TRUEHANG_WORKROOM, "serve",     "--data", folder.path().string(),
                                          "--listen",        "192.0.2.1", "--port", "0"};
    auto words = beyond;
    words.emplace_back("--without-tls");
    const auto told = run_program(words);
    EXPECT_EQ(told.exit_code, 2);
    EXPECT_NE(told.err.find("warning"), std::string::npos);
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "own-certificate.pem"));
    const auto outcome = run_program(beyond);
    EXPECT_EQ(outcome.exit_code, 2);
    EXPECT_EQ(outcome.err.find("warning"), std::string::npos) << outcome.err;
    EXPECT_TRUE(std::filesystem::exists(folder.path() / "own-certificate.pem"));
}

TEST(ServeCommand, servesOverTlsOfToday) {
    const TemporaryFolder folder;
    const auto make = [&folder](const std::string& name) {
        const std::pair pair{(folder.path() / (name + ".key.pem")).string(),
                             (folder.path() / (name + ".pem")).string()};
        EXPECT_EQ(run_program({"openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1",
                               "-nodes", "-days", "2", "-subj", "/CN=workroom", "-addext",
                               "subjectAltName=IP:127.0.0.1", "-keyout", pair.first, "-out", pair.second})
                      .exit_code,
                  0);
        return pair;
    };
    const auto [key, certificate] = make("workroom");
    const auto [other_key, other_certificate] = make("somebody-else");
    const Receiver receiver(folder.path() / "data", {"--certificate", certificate, "--key", key});
    const auto address = "https://127.0.0.1:" + std::to_string(receiver.port()) + "/health";
    const auto trusted = run_program({"curl", "-sS", "--max-time", "10", "--cacert", certificate, address});
    EXPECT_EQ(trusted.exit_code, 0) << trusted.err;
    EXPECT_EQ(trusted.out, "{\"status\": \"ok\"}");
    // curl's exit code 60: the peer's certificate can't be verified; 35: no TLS connection.
    EXPECT_EQ(run_program({"curl", "-sS", "--max-time", "10", "--cacert", other_certificate, address}).exit_code, 60);
    EXPECT_EQ(run_program({"curl", "-sS", "--max-time", "10", "--tls-max", "1.1", "--ciphers", "ALL:@SECLEVEL=0",
                           "--cacert", certificate, address})
                  .exit_code,
              35);
}
