// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/access.h"

#include <cstring>

namespace truehang::workroom {

namespace {

std::int64_t in_ms(sync::Time time) { return time.time_since_epoch().count(); }

const Error wrong_code{ErrorCode::unknown_word, "/code", "This code doesn’t hold. Ask the workroom for a new one."};

/// Uses a code up: true where it held.
bool use_code(Records& records, const std::string& code, std::int64_t now) {
    Query sweep(records, "DELETE FROM pairing_code WHERE expires_ms <= ?");
    sweep.bind(1, now);
    sweep.exec();
    Query use(records, "DELETE FROM pairing_code WHERE code_sha256 = ?");
    use.bind(1, kept_secret(code));
    return use.exec() == 1;
}

}  // namespace

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
        insert.bind(1, kept_secret(code));
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
    const auto secret = new_secret();
    // A code that doesn’t hold is no fault of the write: those that ran out go for good with it, whatever a clock does.
    using Taken = std::optional<std::string>;
    const auto taken = archive_.database().write_and_wait<Taken>([&](Records& records) -> Result<Taken> {
        if (!code || !use_code(records, *code, now)) {
            return Taken();
        }
        enter(records, secret.id, secret.kept);
        return Taken(secret.shown);
    });
    if (taken && !*taken) {
        return wrong_code;
    }
    forgive_try();
    return taken ? Result<std::string>(**taken) : taken.error();
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
            if (!query.step() || !same_secret(query.text(0), secret->kept)) {
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
        return query.step() && same_secret(query.text(0), secret->kept);
    });
}

}  // namespace truehang::workroom
