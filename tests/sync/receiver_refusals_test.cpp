// SPDX-License-Identifier: Apache-2.0
// Ids and paths that would like to be somebody else's files, and bodies that are longer than they say.
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace fs = std::filesystem;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000d1";

/// Names of all that stands in a folder, but for what SQLite keeps beside its file while it is open.
std::set<std::string> names_in(const fs::path& folder) {
    std::set<std::string> names;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        const auto name = fs::relative(entry.path(), folder).string();
        if (!name.starts_with("workroom.sqlite")) {
            names.insert(name);
        }
    }
    return names;
}

/// Told of a path that names nothing: malformed, not there, nothing to be put there.
const std::set<int> no_such_path{400, 404, 405};

std::string put_head(const std::string& token, const std::string& path, const std::string& more) {
    return "PUT " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nAuthorization: Bearer " + token +
           "\r\nContent-Type: application/json\r\n" + more + "\r\n";
}

struct Workroom {
    TemporaryFolder folder;
    fs::path data = folder.path() / "outer" / "data";
    std::optional<Receiver> receiver;
    std::string token;

    Workroom() {
        fs::create_directories(data);
        receiver.emplace(data);
        token = receiver->pair();
    }
};

}  // namespace

// protocol/README.md: an id is 1 to 200 bytes, no control characters, not "." or "..", percent-encoded (RFC 3986, 2.1).
TEST(Refused, areIdsThatCantTravel) {
    const Workroom workroom;
    const auto before = names_in(workroom.folder.path());
    auto document = nlohmann::json::parse(example_survey("a", 1));
    document.erase("revision");  // it may be sent under any
    const auto survey = document.dump();
    const auto status = [&](const std::string& id, const std::string& number) {
        return workroom.receiver
            ->ask("PUT", "/surveys/" + id + "/revisions/" + number,
                  {{"Authorization", "Bearer " + workroom.token},
                   {"Content-Type", "application/json"},
                   {"Content-Digest", digest_field(sha256(survey))}},
                  survey)
            .status;
    };
    EXPECT_EQ(status("a", "1"), 201) << "what is refused below is refused for its path alone";
    for (const auto& odd :
         {std::string("."), std::string(".."), std::string("%2e"), std::string("%2e%2E"), std::string(),
          std::string("a%00b"), std::string("a%0ab"), std::string("a%7f"), std::string("%"), std::string("a%2"),
          std::string("a%zz"), std::string(201, 'a'), std::string("a/b")}) {
        EXPECT_TRUE(no_such_path.contains(status(odd, "1"))) << odd;
    }
    for (const auto* number : {"0", "-1", "01", "1.0", "%31", "+1", "9007199254740992", "99999999999999999999"}) {
        EXPECT_TRUE(no_such_path.contains(status("a", number))) << number;
    }
    EXPECT_EQ(names_in(workroom.folder.path()), before);
}

TEST(Refused, areWaysOutOfTheFolderInIds) {
    const Workroom workroom;
    const auto before = names_in(workroom.folder.path());
    for (const auto* climbing : {"../../escaped", "/etc/escaped", "..\\escaped", "photos/escaped", "a/../../escaped",
                                 "'; DROP TABLE revision; --", "${HOME}", "a?b#c"}) {
        const std::string name = climbing;
        // Such an id is text like any other: it names a row, and no file.
        EXPECT_EQ(workroom.receiver->put_survey(workroom.token, name, 1, example_survey(name, 1)).status, 201) << name;
        EXPECT_EQ(workroom.receiver->ask("GET", "/surveys/" + percent_encode(name)).status, 200) << name;
        EXPECT_EQ(workroom.receiver->ask("GET", revision_path(name, 1)).body, example_survey(name, 1)) << name;
    }
    EXPECT_EQ(names_in(workroom.folder.path()), before) << "nothing was made in or beside the folder";
    EXPECT_NE(workroom.receiver->ask("GET", "/").body.find("/surveys/..%2F..%2Fescaped"), std::string::npos);
}

TEST(Refused, areWaysOutOfTheFolderInPathsOfFiles) {
    const Workroom workroom;
    const auto before = names_in(workroom.folder.path());
    const std::string digest(64, 'a');
    for (const auto& path :
         {std::string("/photos/../workroom.sqlite"), std::string("/photos/..%2fworkroom.sqlite"),
          std::string("/photos/%2e%2e/workroom.sqlite"), "/photos/" + std::string(63, 'a') + "/",
          "/photos/" + std::string(64, 'A'), "/photos/" + digest + "/..", "/photos/" + digest + "%00",
          std::string("/font/../../../../etc/passwd"), std::string("/font/..%2f..%2fetc%2fpasswd"),
          std::string("/font//etc/passwd"), std::string("/style.css/../workroom.sqlite"),
          std::string("/rules/../workroom.sqlite"), std::string("/uploads/../photos"), std::string("/./"),
          std::string("//"), std::string("/..")}) {
        const auto reply = workroom.receiver->ask("GET", path);
        EXPECT_GE(reply.status, 400) << path;
        EXPECT_EQ(reply.body.find("SQLite format"), std::string::npos) << path;
        EXPECT_EQ(reply.body.find("root:"), std::string::npos) << path;
        for (const auto* method : {"PUT", "POST", "PATCH", "DELETE"}) {
            const auto sent = workroom.receiver->ask(
                method, path, {{"Authorization", "Bearer " + workroom.token}, {"Upload-Length", "1"}}, "x");
            EXPECT_GE(sent.status, 400) << method << " " << path;
            EXPECT_LT(sent.status, 500) << method << " " << path;
        }
    }
    EXPECT_EQ(names_in(workroom.folder.path()), before);
}

// RFC 9112, 6.3: the body ends where Content-Length says; what follows is another request, here none.
TEST(Refused, areBodiesThatGoOnBeyondWhatTheySaid) {
    const Workroom workroom;
    const auto survey = example_survey(id, 1);
    const auto whole = digest_field(sha256(survey));
    for (const auto& digest : {whole, digest_field(sha256(survey.substr(0, survey.size() - 9)))}) {
        Connection connection(workroom.receiver->port());
        connection.send(put_head(workroom.token, revision_path(id, 1),
                                 "Content-Digest: " + digest +
                                     "\r\nContent-Length: " + std::to_string(survey.size() - 9) + "\r\n") +
                        survey);
        const auto reply = connection.read_reply();
        EXPECT_EQ(reply.status, digest == whole ? 400 : 422) << reply.body;
        EXPECT_TRUE(connection.is_closed_by_peer()) << "what came behind it is no request";
    }
    EXPECT_EQ(workroom.receiver->ask("GET", receipt_path(id)).status, 404) << "nothing was stored";
    const std::string photo(20'000, 'p');
    Connection connection(workroom.receiver->port());
    connection.send(put_head(workroom.token, photo_path(hex(sha256(photo))), "Content-Length: 19999\r\n") + photo);
    EXPECT_EQ(connection.read_reply().status, 400);
    EXPECT_EQ(workroom.receiver->ask("HEAD", photo_path(hex(sha256(photo)))).status, 404);
    EXPECT_TRUE(fs::is_empty(workroom.data / "incoming"));
}

TEST(Refused, areDocumentsThatStopShortOfWhatTheySaid) {
    const Workroom workroom;
    const auto survey = example_survey(id, 1);
    {
        Connection connection(workroom.receiver->port());
        connection.send(put_head(workroom.token, revision_path(id, 1),
                                 "Content-Digest: " + digest_field(sha256(survey)) +
                                     "\r\nContent-Length: " + std::to_string(survey.size() + 1) + "\r\n") +
                        survey);
        connection.end_sending();
        const auto reply = connection.read_reply();
        EXPECT_TRUE(reply.status == 0 || reply.status >= 400) << reply.status;
    }
    {
        Connection connection(workroom.receiver->port());
        connection.send(
            put_head(workroom.token, revision_path(id, 1),
                     "Content-Digest: " + digest_field(sha256(survey)) + "\r\nTransfer-Encoding: chunked\r\n") +
            "10\r\n" + survey.substr(0, 16) + "\r\n");
        connection.end_sending();
        const auto reply = connection.read_reply();
        EXPECT_TRUE(reply.status == 0 || reply.status >= 400) << reply.status;
    }
    EXPECT_EQ(workroom.receiver->ask("GET", receipt_path(id)).status, 404) << "nothing was stored";
    EXPECT_EQ(workroom.receiver->put_survey(workroom.token, id, 1, survey).status, 201);
}

TEST(Refused, areTokensAndPeoplesCookiesInEachOthersPlace) {
    const Workroom workroom;
    const auto survey = example_survey(id, 1);
    const Fields as_cookie{{"Cookie", "truehang-session=" + workroom.token},
                           {"Content-Type", "application/json"},
                           {"Content-Digest", digest_field(sha256(survey))}};
    EXPECT_EQ(workroom.receiver->ask("PUT", revision_path(id, 1), as_cookie, survey).status, 401);
    EXPECT_EQ(workroom.receiver
                  ->ask("GET", "/", {{"Host", "workroom.example"}, {"Cookie", "truehang-session=" + workroom.token}})
                  .status,
              401);
    EXPECT_EQ(workroom.receiver->ask("GET", "/?token=" + workroom.token, {{"Host", "workroom.example"}}).status, 401);
}
