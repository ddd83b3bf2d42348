// SPDX-License-Identifier: Apache-2.0
// The certificate a workroom makes for itself, as curl and openssl see it.
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <algorithm>
#include <csignal>
#include <fstream>

using namespace truehang::sync::test;

namespace {

struct Served {
    TemporaryFolder folder;
    std::filesystem::path file = folder.path() / "own-certificate.pem";
    std::optional<Receiver> receiver;

    Served() { start(); }
    void start() { receiver.emplace(folder.path(), std::vector<std::string>{"--listen", "0.0.0.0"}); }
    [[nodiscard]] std::string address() const { return "127.0.0.1:" + std::to_string(receiver->port()); }
    [[nodiscard]] Outcome openssl(std::vector<std::string> words) const {
        words.insert(words.begin(), "openssl");
        return run_program(words);
    }
    [[nodiscard]] Outcome connect(const std::string& version) const {
        return openssl({"s_client", "-connect", address(), version, "-cipher", "ALL:@SECLEVEL=0"});
    }
    /// What openssl says of the certificate that is served: 64 lower-case digits.
    [[nodiscard]] std::string fingerprint() const {
        const auto served = run_program({"openssl", "s_client", "-connect", address()}).out;
        auto line = run_program({"openssl", "x509", "-noout", "-fingerprint", "-sha256"}, served).out;
        line = line.substr(line.find('=') + 1);
        std::erase_if(line, [](char c) { return c == ':' || c == '\n'; });
        std::transform(line.begin(), line.end(), line.begin(),
                       [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
        return line;
    }
};

}  // namespace

TEST(OwnCertificate, isTrustedByOneWhoWasGivenItUnderTheNamesOfThisMachine) {
    const Served served;
    for (const auto* host : {"127.0.0.1", "localhost"}) {
        const auto url = std::string("https://") + host + ":" + std::to_string(served.receiver->port()) + "/health";
        const auto trusted = run_program({"curl", "-sS", "--max-time", "10", "--cacert", served.file.string(), url});
        EXPECT_EQ(trusted.exit_code, 0) << trusted.err;
        // curl's exit code 60: the peer's certificate can't be verified.
        EXPECT_EQ(run_program({"curl", "-sS", "--max-time", "10", url}).exit_code, 60);
    }
    const auto text = served.openssl({"x509", "-in", served.file.string(), "-noout", "-text"}).out;
    EXPECT_NE(text.find("prime256v1"), std::string::npos) << text;
    EXPECT_NE(text.find("DNS:localhost"), std::string::npos);
    EXPECT_NE(text.find("CA:FALSE"), std::string::npos);
    // Ten years are 315,360,000 seconds and some leap days: openssl says with 0 that it holds that long.
    EXPECT_EQ(served.openssl({"x509", "-in", served.file.string(), "-noout", "-checkend", "315360000"}).exit_code, 0);
    EXPECT_EQ(served.openssl({"x509", "-in", served.file.string(), "-noout", "-checkend", "315705600"}).exit_code, 1);
}

TEST(OwnCertificate, isReadByItsOwnerAloneAndKeptForLater) {
    Served served;
    struct stat state {};
    ASSERT_EQ(::stat(served.file.c_str(), &state), 0);
    EXPECT_EQ(state.st_mode & 0777U, 0600U);
    const auto bytes = file_text(served.file);
    const auto fingerprint = served.fingerprint();
    ASSERT_EQ(fingerprint.size(), 64U) << fingerprint;
    served.receiver->end(SIGTERM);
    ::chmod(served.file.c_str(), 0644);  // as a copy that was brought back may be
    served.start();
    EXPECT_EQ(file_text(served.file), bytes);
    EXPECT_EQ(served.fingerprint(), fingerprint);
    ASSERT_EQ(::stat(served.file.c_str(), &state), 0);
    EXPECT_EQ(state.st_mode & 0777U, 0600U);
}

TEST(OwnCertificate, isSpokenWithOverTlsOfTodayAlone) {
    const Served served;
    EXPECT_EQ(served.connect("-tls1_2").exit_code, 0);
    EXPECT_EQ(served.connect("-tls1_3").exit_code, 0);
    for (const auto* old : {"-tls1", "-tls1_1"}) {
        const auto refused = served.connect(old);
        EXPECT_NE(refused.exit_code, 0) << old;
        // RFC 5246, section 7.2.2: the alert of a side that doesn't speak the version; so it was the workroom's word.
        EXPECT_NE(refused.err.find("alert protocol version"), std::string::npos) << refused.err;
    }
}

TEST(OwnCertificate, isToldToPhonesWithTheCode) {
    const Served served;
    const auto url = "https://" + served.address();
    const auto page = run_program({"curl", "-sS", "--max-time", "10", "--cacert", served.file.string(), "-X", "POST",
                                   "-H", "Origin: " + url, "-d", "", url + "/devices/code"});
    ASSERT_EQ(page.exit_code, 0) << page.err;
    const auto pin = page.out.find("pin=");
    ASSERT_NE(pin, std::string::npos) << page.out;
    EXPECT_EQ(page.out.substr(pin + 4, 64), served.fingerprint());
    EXPECT_EQ(page.out.find("PRIVATE"), std::string::npos);
}

TEST(OwnCertificate, isNeverMadeAnewWhereItCantBeRead) {
    const TemporaryFolder folder;
    const auto file = folder.path() / "own-certificate.pem";
    std::ofstream(file) << "half of it";
    const std::vector<std::string> words{TRUEHANG_WORKROOM, "serve",   "--data", folder.path().string(),
                                         "--listen",        "0.0.0.0", "--port", "0"};
    const auto outcome = run_program(words);
    EXPECT_EQ(outcome.exit_code, 2);
    EXPECT_NE(outcome.err.find("Bring back a copy"), std::string::npos) << outcome.err;
    EXPECT_EQ(file_text(file), "half of it");
}
