// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/access.h"

#include "protocol/digest.h"

#include <openssl/crypto.h>
#include <openssl/rand.h>

#include <cstring>
#include <stdexcept>

namespace truehang::workroom {

namespace {

std::string hex_of(std::string_view bytes) {
    static constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        text += digits[byte >> 4U];
        text += digits[byte & 15U];
    }
    return text;
}

std::string kept_form(std::string_view secret) { return sync::hex(sync::sha256(secret)); }

std::int64_t in_ms(sync::Time time) { return time.time_since_epoch().count(); }

const Error wrong_code{ErrorCode::unknown_word, "/code", "This code doesn’t hold. Ask the workroom for a new one."};

/// What somebody shows, `ID.SECRET`, the secret as it is kept.
struct ShownSecret {
    std::string id, shown;
};

std::optional<ShownSecret> read_secret(std::string_view text) {
    const auto dot = text.find('.');
    if (dot == std::string_view::npos || text.size() > 200) {
        return std::nullopt;
    }
    return ShownSecret{std::string(text.substr(0, dot)), kept_form(text.substr(dot + 1))};
}

bool same(const std::string& kept, const std::string& shown) {
    return kept.size() == shown.size() && CRYPTO_memcmp(kept.data(), shown.data(), shown.size()) == 0;
}

/// Uses a code up: true where it held.
bool use_code(Records& records, const std::string& code, std::int64_t now) {
    Query sweep(records, "DELETE FROM pairing_code WHERE expires_ms <= ?");
    sweep.bind(1, now);
    sweep.exec();
    Query use(records, "DELETE FROM pairing_code WHERE code_sha256 = ?");
    use.bind(1, kept_form(code));
    return use.exec() == 1;
}

}  // namespace

std::string random_bytes(std::size_t count) {
    std::string bytes(count, '\0');
    if (RAND_bytes(reinterpret_cast<unsigned char*>(bytes.data()), static_cast<int>(count)) != 1) {
        throw std::runtime_error("no randomness");
    }
    return bytes;
}

Access::Access(Archive& archive) : archive_(archive), last_seen_(archive.database(), archive.clock()) {}

Result<std::string> Access::new_code() {
    std::uint64_t bits = 0;
    std::memcpy(&bits, random_bytes(sizeof bits).data(), sizeof bits);
    const auto shown = sync::pairing_code(bits);
    const auto code = sync::read_pairing_code(shown).value_or("");
    const auto expires = in_ms(archive_.clock()() + sync::pairing_code_life);
    return archive_.database().write_and_wait<std::string>([&](Records& records) -> Result<std::string> {
        Query insert(records,
                     "INSERT INTO pairing_code(code_sha256, expires_ms) VALUES(?, ?) ON CONFLICT(code_sha256)"
                     " DO UPDATE SET expires_ms = excluded.expires_ms");
        insert.bind(1, kept_form(code));
        insert.bind(2, expires);
        insert.exec();
        return shown;
    });
}

bool Access::begin_try() {
    const auto now = archive_.clock()();
    const std::lock_guard lock(mutex_);
    std::erase_if(tries_, [now](sync::Time at) { return at <= now - std::chrono::minutes(1) || at > now; });
    if (tries_.size() >= static_cast<std::size_t>(sync::pairing_tries_a_minute)) {
        return false;
    }
    tries_.push_back(now);
    return true;
}

void Access::forgive_try() {
    const std::lock_guard lock(mutex_);
    if (!tries_.empty()) {
        tries_.pop_back();
    }
}

Result<std::string> Access::take_on(std::string_view typed_code, const Enter& enter) {
    if (!begin_try()) {
        return Error{ErrorCode::busy, "/code", "Too many wrong codes. Wait a minute, then try again."};
    }
    const auto code = sync::read_pairing_code(typed_code);
    const auto now = in_ms(archive_.clock()());
    const auto id = hex_of(random_bytes(8));
    const auto secret = hex_of(random_bytes(32));
    auto outcome = archive_.database().write_and_wait<std::string>([&](Records& records) -> Result<std::string> {
        if (!code || !use_code(records, *code, now)) {
            return wrong_code;
        }
        enter(records, id, kept_form(secret));
        return id + "." + secret;
    });
    if (outcome || outcome.error().code != ErrorCode::unknown_word) {
        forgive_try();
    }
    return outcome;
}

Result<std::string> Access::pair(std::string_view typed_code, std::string_view device_name) {
    return take_on(typed_code, [&](Records& records, const std::string& id, const std::string& kept) {
        Query insert(records, "INSERT INTO device(id, token_sha256, name, paired_at) VALUES(?, ?, ?, ?)");
        insert.bind(1, id);
        insert.bind(2, kept);
        insert.bind(3, std::string(device_name));
        insert.bind(4, sync::write_time(archive_.clock()()));
        insert.exec();
    });
}

Result<std::string> Access::sign_in(std::string_view typed_code) {
    return take_on(typed_code, [&](Records& records, const std::string& id, const std::string& kept) {
        Query insert(records, "INSERT INTO session(id, secret_sha256, expires_ms) VALUES(?, ?, ?)");
        insert.bind(1, id);
        insert.bind(2, kept);
        insert.bind(3, in_ms(archive_.clock()() + session_life));
        insert.exec();
    });
}

Result<std::optional<TokenHolder>> Access::device_of(std::string_view token) {
    const auto secret = read_secret(token);
    if (!secret) {
        return std::optional<TokenHolder>();
    }
    auto holder = archive_.database().read<std::optional<TokenHolder>>(
        [&](Records& records) -> Result<std::optional<TokenHolder>> {
            Query query(records, "SELECT token_sha256, revoked_at IS NOT NULL FROM device WHERE id = ?");
            query.bind(1, secret->id);
            if (!query.step() || !same(query.text(0), secret->shown)) {
                return std::optional<TokenHolder>();
            }
            return std::optional(TokenHolder{secret->id, query.number(1) != 0});
        });
    if (holder && *holder && !(*holder)->revoked) {
        last_seen_.saw(secret->id);
    }
    return holder;
}

Result<bool> Access::signed_in(std::string_view session) {
    const auto secret = read_secret(session);
    if (!secret) {
        return false;
    }
    const auto now = in_ms(archive_.clock()());
    return archive_.database().read<bool>([&](Records& records) -> Result<bool> {
        Query query(records, "SELECT secret_sha256 FROM session WHERE id = ? AND expires_ms > ?");
        query.bind(1, secret->id);
        query.bind(2, now);
        return query.step() && same(query.text(0), secret->shown);
    });
}

}  // namespace truehang::workroom
