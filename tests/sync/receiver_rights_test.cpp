// SPDX-License-Identifier: Apache-2.0
// Each route, asked by nobody, by a device and by each role.
#include "receiver_people.h"
#include "workroom/people/rights.h"

#include <algorithm>
#include <map>

using namespace truehang::sync;
using namespace truehang::sync::test;
namespace workroom = truehang::workroom;

namespace {

/// Who may: n anybody who shows nothing, d a device, s a surveyor, w one of the workroom, o an owner. Written down here
/// a second time, from what was asked for: surveyors see surveys and sheets and ask questions; the workroom marks
/// steps, writes down rolls and rules and pairs devices; an owner sees to people and revokes.
const std::map<std::string, std::string> who_may{
    {"GET /style.css", "ndswo"},
    {"GET /icon.svg", "ndswo"},
    {"GET /arrivals.js", "ndswo"},
    {"GET /font/*", "ndswo"},
    {"GET /sign-in", "ndswo"},
    {"POST /sign-in", "ndswo"},
    {"POST /pair", "ndswo"},
    {"GET /health", "ndswo"},
    {"PUT /surveys/*/revisions/*", "d"},
    {"PUT /photos/*", "d"},
    {"POST /photos/*", "d"},
    {"GET /uploads/*", "d"},
    {"PATCH /uploads/*", "d"},
    {"DELETE /uploads/*", "d"},
    {"GET /arrivals", "dswo"},
    {"GET /changes", "dswo"},
    {"GET /rules", "dswo"},
    {"GET /rules/*", "dswo"},
    {"GET /photos/*", "dswo"},
    {"GET /surveys/*/revisions/*", "dswo"},
    {"GET /surveys/*/receipt", "dswo"},
    {"GET /surveys/*/figures", "dswo"},
    {"GET /surveys/*/marks", "dswo"},
    {"GET /questions", "dswo"},
    {"GET /surveys/*/questions", "dswo"},
    {"PUT /surveys/*/questions/*/answers/*", "d"},
    {"GET /surveys/*/ask", "dswo"},
    {"POST /surveys/*/ask", "swo"},
    {"GET /surveys/*/rolls", "dswo"},
    {"GET /surveys/*/rolls/count", "dswo"},
    {"GET /surveys/*/rolls/plan", "dswo"},
    {"GET /surveys/*/rolls/document", "dswo"},
    {"GET /surveys/*/rolls/document/*", "dswo"},
    {"POST /surveys/*/rolls", "wo"},
    {"GET /surveys/*/steps", "dswo"},
    {"POST /surveys/*/steps", "wo"},
    {"POST /house-rules", "wo"},
    {"GET /devices", "wo"},
    {"POST /devices/code", "wo"},
    {"POST /devices/revoke", "o"},
    {"GET /people", "o"},
    {"POST /people", "o"},
    {"GET /people/*", "o"},
    {"POST /people/*/role", "o"},
    {"POST /people/*/password", "o"},
    {"POST /people/*/sessions", "o"},
    {"POST /people/*/out", "o"},
    {"GET /me", "swo"},
    {"POST /me/password", "swo"},
    {"POST /me/sessions", "swo"},
    {"POST /sign-out", "swo"},
    {"GET /", "dswo"},
    {"GET /house-rules", "dswo"},
    {"GET /erased", "dswo"},
    {"GET /sheet/*", "dswo"},
    {"GET /surveys/**", "dswo"},
};

const std::string id = "01924f6a-7c00-7000-8000-0000000000c2";
const std::string digest(64, 'a');

/// A path that a route names, of what isn't here, or is the survey that every role may look at.
std::string path_for(std::string pattern) {
    const auto put = [&](const std::string& from, const std::string& to) {
        const auto at = pattern.find(from);
        if (at != std::string::npos) {
            pattern.replace(at, from.size(), to);
        }
    };
    put("/surveys/**", "/surveys/" + id);
    put("/surveys/*", "/surveys/" + id);
    put("/photos/*", "/photos/" + digest);
    put("/uploads/*", "/uploads/" + digest);
    put("/sheet/*", "/sheet/ABCD-EFGH-JKMN");
    put("/font/*", "/font/lato.ttf");
    while (pattern.find('*') != std::string::npos) {
        put("*", "1");
    }
    return pattern;
}

std::string name_of(const workroom::Route& route) { return std::string(route.method) + " " + std::string(route.path); }

/// Whether an answer says that this one may not: not known, or not of that role.
bool is_refused(const Reply& reply) {
    return reply.status == 401 || (reply.status == 403 && has(reply, "Not yours to do"));
}

struct Everybody {
    Peopled people;
    std::string token;
    std::map<char, std::string> names{{'s', "Sue"}, {'w', "Will"}, {'o', "Olga"}};

    Everybody() : token(people.receiver.pair()) {
        EXPECT_EQ(people.receiver.put_survey(token, id, 1, example_survey(id, 1)).status, 201);
        people.add("Olga", "owner");
        people.add("Will", "workroom");
        people.add("Sue", "surveyor");
    }
    /// As each would ask: nobody and devices from this machine too, people with their cookie.
    [[nodiscard]] Reply ask(char who, const workroom::Route& route, const std::string& cookie) const {
        const auto host = "127.0.0.1:" + std::to_string(people.receiver.port());
        Fields fields{{"Host", host}, {"Origin", "http://" + host}};
        if (who == 'd') {
            fields.emplace_back("Authorization", "Bearer " + token);
        } else if (who != 'n') {
            fields.emplace_back("Cookie", cookie);
        }
        return people.receiver.ask(std::string(route.method), path_for(std::string(route.path)), fields);
    }
};

}  // namespace

TEST(Rights, areWhatTheyShouldBeForEachRouteAndRole) {
    const Everybody everybody;
    std::map<char, std::string> cookies;
    for (const auto& [who, name] : everybody.names) {
        cookies[who] = everybody.people.in(name);
    }
    for (const auto& route : workroom::routes()) {
        const auto entry = who_may.find(name_of(route));
        ASSERT_NE(entry, who_may.end()) << name_of(route) << ": say above who may";
        for (const char who : {'n', 'd', 's', 'w', 'o'}) {
            const bool ends_it = route.path == "/sign-out";
            const bool is_person = who != 'n' && who != 'd';
            const auto cookie =
                !is_person ? "" : (ends_it ? everybody.people.in(everybody.names.at(who)) : cookies[who]);
            const auto reply = everybody.ask(who, route, cookie);
            ASSERT_GT(reply.status, 0) << name_of(route) << " as " << who;
            EXPECT_LT(reply.status, 500) << name_of(route) << " as " << who << reply.body;
            const bool may = entry->second.find(who) != std::string::npos;
            EXPECT_EQ(!is_refused(reply), may) << name_of(route) << " as " << who << ": " << reply.status;
            if (may && route.method == "GET" && route.right == workroom::Right::look) {
                const auto head = workroom::Route{"HEAD", route.path, route.right, route.desk};
                EXPECT_FALSE(is_refused(everybody.ask(who, head, cookie))) << name_of(route);
            }
        }
    }
    EXPECT_EQ(who_may.size(), workroom::routes().size()) << "one that is gone stands above";
}

TEST(Rights, reachNothingThatNoRouteNames) {
    const Everybody everybody;
    const auto olga = everybody.people.in("Olga");
    for (const auto& [method, path] : std::vector<std::pair<std::string, std::string>>{{"GET", "/nothing"},
                                                                                       {"GET", "/people/1/role"},
                                                                                       {"GET", "/devices/code"},
                                                                                       {"GET", "//"},
                                                                                       {"GET", "/people/"},
                                                                                       {"GET", "/PEOPLE"},
                                                                                       {"GET", "/%70eople"},
                                                                                       {"GET", "/surveys/"}}) {
        const workroom::Route route{method, path, workroom::Right::look, workroom::Desk::page};
        EXPECT_EQ(workroom::route_of(method, path), nullptr) << path;
        EXPECT_EQ(everybody.ask('o', route, olga).status, 404) << path;
        EXPECT_EQ(everybody.ask('n', route, "").status, 401) << path;
    }
    for (const auto* method : {"POST", "PUT", "DELETE", "PATCH"}) {
        for (const auto* path : {"/nothing", "/", "/people/1", "/devices", "/surveys/1", "/metrics"}) {
            const workroom::Route route{method, path, workroom::Right::look, workroom::Desk::page};
            EXPECT_EQ(everybody.ask('o', route, olga).status, 405) << method << " " << path;
        }
    }
}

TEST(Rights, ofAFormAskForAPageOfThisSite) {
    const Everybody everybody;
    const auto olga = everybody.people.in("Olga");
    for (const auto& route : workroom::routes()) {
        const bool form = route.method == "POST" && route.desk != workroom::Desk::protocol;
        for (const auto* origin : {"http://evil.example", "null", ""}) {
            if (!form) {
                continue;
            }
            Fields fields{{"Cookie", olga}, {"Content-Type", "application/x-www-form-urlencoded"}};
            if (*origin != '\0') {
                fields.emplace_back("Origin", origin);
            }
            const auto reply = everybody.people.receiver.ask("POST", path_for(std::string(route.path)), fields,
                                                             "name=Olga&password=a");
            EXPECT_EQ(reply.status, route.desk == workroom::Desk::sign_in ? 403 : 400)
                << name_of(route) << " from “" << origin << "”";
        }
    }
    EXPECT_EQ(everybody.people.get("/", olga).status, 200) << "nobody was signed out";
}

TEST(Rights, areOneLineEachInOneTable) {
    using workroom::Right;
    using workroom::Role;
    for (const Role role : workroom::all_roles) {
        EXPECT_TRUE(workroom::may(role, Right::open));
        EXPECT_FALSE(workroom::may(role, Right::device)) << "what devices send no person sends";
        EXPECT_EQ(workroom::role_of(workroom::word_of(role)), role);
    }
    for (const auto& line : workroom::roles_may) {
        EXPECT_EQ(std::ranges::count(workroom::roles_may, line.right, &workroom::RoleMay::right), 1);
    }
    EXPECT_EQ(workroom::role_of("king"), std::nullopt);
}
