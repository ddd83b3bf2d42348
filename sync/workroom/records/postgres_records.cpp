// SPDX-License-Identifier: Apache-2.0
#include "workroom/records/postgres_records.h"

#include "units/utf8.h"

#include <libpq-fe.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <utility>
#include <vector>

namespace truehang::workroom {

namespace {

constexpr std::string_view where = "database";

// Types of PostgreSQL's catalogue (pg_type.dat) that columns here have.
constexpr Oid bool_type = 16, int8_type = 20, int2_type = 21, int4_type = 23;

struct Cleared {
    void operator()(PGresult* result) const { PQclear(result); }
};
using Outcome = std::unique_ptr<PGresult, Cleared>;

bool begins(std::string_view text, std::string_view with) { return text.substr(0, with.size()) == with; }

/// SQLSTATE classes of PostgreSQL's appendix A, “Error Codes”.
ErrorCode code_of(std::string_view state) {
    if (state == "53100") {
        return ErrorCode::full;
    }
    for (const auto* passing : {"08", "53", "57", "55P03", "40", "25006"}) {
        if (begins(state, passing)) {
            return ErrorCode::busy;
        }
    }
    return begins(state, "XX001") || begins(state, "XX002") ? ErrorCode::damaged : ErrorCode::io;
}

Error error_of(ErrorCode code, std::string_view words) {
    switch (code) {
        case ErrorCode::full:
            return {code, std::string(where), "There is no room left on the database’s disk."};
        case ErrorCode::busy:
            return {code, std::string(where), "The workroom’s database can’t be reached just now, or is busy."};
        case ErrorCode::damaged:
            return {code, std::string(where), "The workroom’s database is damaged; bring back a copy."};
        default:
            return {code, std::string(where), std::string(words.substr(0, words.find('\n')))};
    }
}

[[noreturn]] void fail(PGconn* connection, const PGresult* result) {
    const char* state = result != nullptr ? PQresultErrorField(result, PG_DIAG_SQLSTATE) : nullptr;
    const bool gone = PQstatus(connection) != CONNECTION_OK;
    throw RecordsFault(error_of(gone ? ErrorCode::busy : code_of(state != nullptr ? state : ""),
                                result != nullptr ? PQresultErrorMessage(result) : PQerrorMessage(connection)));
}

Outcome checked(PGconn* connection, PGresult* given) {
    Outcome result(given);
    const auto status = PQresultStatus(result.get());
    if (status != PGRES_COMMAND_OK && status != PGRES_TUPLES_OK) {
        fail(connection, result.get());
    }
    return result;
}

/// `?` and `?N` as `$N`, but for what stands in quotes.
std::string numbered(std::string_view sql) {
    std::string out;
    int last = 0;
    bool quoted = false;
    for (std::size_t at = 0; at < sql.size(); ++at) {
        quoted = (sql[at] == '\'') != quoted;
        if (sql[at] != '?' || quoted) {
            out += sql[at];
            continue;
        }
        out += '$';
        const bool named = at + 1 < sql.size() && sql[at + 1] >= '0' && sql[at + 1] <= '9';
        out += named ? std::string() : std::to_string(++last);
    }
    return out;
}

/// Each byte that belongs to no character, and U+0000, which PostgreSQL doesn’t take, as U+FFFD: what comes from
/// outside (a token, a search) may hold anything.
std::string storable(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const auto length = text.front() == '\0' ? 0 : character_length(text);
        out += length == 0 ? std::string_view("\xEF\xBF\xBD") : text.substr(0, length);
        text.remove_prefix(std::max(length, std::size_t{1}));
    }
    return out;
}

class PostgresRows final : public Rows {
public:
    PostgresRows(PGconn* connection, std::string_view sql) : connection_(connection), sql_(numbered(sql)) {}

    void bind(int place, std::int64_t number) override { at(place) = {std::to_string(number), 0}; }
    void bind(int place, std::string_view text) override { at(place) = {storable(text), 1}; }
    void bind_bytes(int place, std::string_view bytes) override { at(place) = {std::string(bytes), 1}; }
    bool step() override {
        if (!result_) {
            ask();
        } else {
            ++row_;
        }
        return row_ < PQntuples(result_.get());
    }
    long long exec() override {
        ask();
        const std::string_view count = PQcmdTuples(result_.get());
        long long changed = 0;
        std::from_chars(count.data(), count.data() + count.size(), changed);
        return changed;
    }
    void reset() override { result_.reset(); }
    [[nodiscard]] bool is_null(int column) const override { return PQgetisnull(result_.get(), row_, column) == 1; }
    [[nodiscard]] std::int64_t number(int column) const override;
    [[nodiscard]] std::string text(int column) const override {
        return {PQgetvalue(result_.get(), row_, column), length(column)};
    }

private:
    struct Bound {
        std::string value;
        int format = 0;  ///< 0 as text, 1 as it is
    };
    Bound& at(int place) {
        bound_.resize(std::max(bound_.size(), static_cast<std::size_t>(place)));
        return bound_[static_cast<std::size_t>(place) - 1];
    }
    [[nodiscard]] std::size_t length(int column) const {
        return static_cast<std::size_t>(PQgetlength(result_.get(), row_, column));
    }
    void ask();

    PGconn* connection_;
    std::string sql_;
    std::vector<Bound> bound_;
    Outcome result_;
    int row_ = 0;
};

void PostgresRows::ask() {
    std::vector<const char*> values;
    std::vector<int> lengths;
    std::vector<int> formats;
    for (const auto& bound : bound_) {
        values.push_back(bound.value.c_str());
        lengths.push_back(static_cast<int>(bound.value.size()));
        formats.push_back(bound.format);
    }
    row_ = 0;
    result_ = checked(connection_, PQexecParams(connection_, sql_.c_str(), static_cast<int>(values.size()), nullptr,
                                                values.data(), lengths.data(), formats.data(), 1));
}

std::int64_t PostgresRows::number(int column) const {
    const auto type = PQftype(result_.get(), column);
    if (type != bool_type && type != int2_type && type != int4_type && type != int8_type) {
        throw RecordsFault({ErrorCode::io, std::string(where), "A number was asked for of another type."});
    }
    // Whole numbers come in network order, at their own width.
    std::uint64_t bits = 0;
    const char* bytes = PQgetvalue(result_.get(), row_, column);
    for (std::size_t i = 0; i < length(column); ++i) {
        bits = bits << 8U | static_cast<unsigned char>(bytes[i]);
    }
    if (type == int4_type) {
        return static_cast<std::int32_t>(static_cast<std::uint32_t>(bits));
    }
    return type == int2_type ? static_cast<std::int16_t>(static_cast<std::uint16_t>(bits))
                             : static_cast<std::int64_t>(bits);
}

}  // namespace

bool is_postgres_url(std::string_view text) { return begins(text, "postgresql://") || begins(text, "postgres://"); }

void PostgresRecords::Closed::operator()(pg_conn* connection) const { PQfinish(connection); }

PostgresRecords::PostgresRecords(const std::string& url) {
    // A server that is gone without a word is noticed within some ten seconds. What the address says itself holds.
    const std::array keywords{"keepalives_idle",
                              "keepalives_interval",
                              "keepalives_count",
                              "tcp_user_timeout",
                              "connect_timeout",
                              "client_encoding",
                              "application_name",
                              "dbname",
                              static_cast<const char*>(nullptr)};
    const std::array values{
        "5", "2", "3", "10000", "5", "UTF8", "truehang-workroom", url.c_str(), static_cast<const char*>(nullptr)};
    connection_.reset(PQconnectdbParams(keywords.data(), values.data(), 1));
    if (PQstatus(connection_.get()) != CONNECTION_OK) {
        fail(connection_.get(), nullptr);
    }
    PQsetNoticeReceiver(
        connection_.get(),
        [](void* warned, const PGresult* notice) {
            const char* severity = PQresultErrorField(notice, PG_DIAG_SEVERITY_NONLOCALIZED);
            *static_cast<bool*>(warned) |= severity != nullptr && std::string_view(severity) == "WARNING";
        },
        &warned_);
    demand_durable();
}

PostgresRecords::~PostgresRecords() = default;

/// No timeout for statements: one that struck while a commit waits for the standby would let it count before that.
void PostgresRecords::demand_durable() {
    if (text_of(*this, "SELECT current_setting('fsync')") != "on") {
        throw RecordsFault({ErrorCode::io, std::string(where),
                            "This database doesn’t write to the disk before it says so: set its fsync to on."});
    }
    run("SET statement_timeout = 0; SET lock_timeout = '20s'; SET idle_in_transaction_session_timeout = '60s'");
    run("SELECT set_config('synchronous_commit', 'on', false)"
        " WHERE current_setting('synchronous_commit') IN ('off', 'local')");
}

std::unique_ptr<Rows> PostgresRecords::prepare(const std::string& sql) {
    return std::make_unique<PostgresRows>(connection_.get(), sql);
}

void PostgresRecords::run(const std::string& sql) {
    warned_ = false;
    const auto result = checked(connection_.get(), PQexec(connection_.get(), sql.c_str()));
    // A transaction with a failed statement is “committed” by rolling it back; one whose wait for the standby was
    // broken off is committed with a warning.
    if (sql == "COMMIT" && (std::string_view(PQcmdStatus(result.get())) != "COMMIT" || warned_)) {
        throw RecordsFault(error_of(ErrorCode::busy, ""));
    }
}

void PostgresRecords::begin_writing() {
    run("BEGIN");
    try {
        run("UPDATE writing SET turn = turn + 1");
    } catch (const RecordsFault&) {
        lost_ = true;  // it stands in a transaction that failed, or with a server that takes no writes any more
        throw;
    }
}

bool PostgresRecords::in_transaction() const {
    const auto status = PQtransactionStatus(connection_.get());
    return status == PQTRANS_INTRANS || status == PQTRANS_INERROR;
}

bool PostgresRecords::is_alive() const { return !lost_ && PQstatus(connection_.get()) == CONNECTION_OK; }

bool PostgresRecords::has_table(const std::string& name) {
    Query query(*this, "SELECT to_regclass(?) IS NOT NULL");
    query.bind(1, name);
    return query.step() && query.number(0) == 1;
}

std::vector<std::string> PostgresRecords::tables_with(const std::string& column) {
    Query query(*this,
                "SELECT table_name FROM information_schema.columns WHERE table_schema = current_schema()"
                " AND column_name = ? ORDER BY table_name");
    query.bind(1, column);
    std::vector<std::string> names;
    while (query.step()) {
        names.push_back(query.text(0));
    }
    return names;
}

bool PostgresRecords::overwrite_freed() {
    Query tables(*this, "SELECT tablename FROM pg_tables WHERE schemaname = current_schema() ORDER BY tablename");
    while (tables.step()) {
        run("VACUUM FULL " + quoted_name(tables.text(0)));
    }
    return true;
}

int PostgresRecords::version() { return static_cast<int>(number_of(*this, "SELECT version FROM writing")); }

void PostgresRecords::set_version(int version) { run("UPDATE writing SET version = " + std::to_string(version)); }

std::string PostgresRecords::own_words(std::string definitions) const {
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 8> instead{{
        {" STRICT, WITHOUT ROWID", ""},
        {" STRICT", ""},
        {"INTEGER PRIMARY KEY AUTOINCREMENT", "BIGINT GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY"},
        {" INTEGER", " BIGINT"},
        {" BLOB", " BYTEA"},
        {" TEXT", " TEXT COLLATE \"C\""},
        {"lower(hex(randomblob(8)))", "substr(md5(random()::text || clock_timestamp()::text), 1, 16)"},
        {"ORDER BY rowid", "ORDER BY received_at"},
    }};
    for (const auto& [from, to] : instead) {
        for (auto at = definitions.find(from); at != std::string::npos; at = definitions.find(from, at + to.size())) {
            definitions.replace(at, from.size(), to);
        }
    }
    return definitions;
}

std::unique_ptr<Records> PostgresEngine::connect_to_write() {
    auto records = std::make_unique<PostgresRecords>(url_);
    if (!prepared_) {
        // Under a lock: two that make one table at the same moment would hinder each other.
        records->run("BEGIN; SELECT pg_advisory_xact_lock(hashtext('truehang'))");
        records->run(
            "CREATE TABLE IF NOT EXISTS writing(one BOOLEAN PRIMARY KEY DEFAULT true CHECK (one),"
            " turn BIGINT NOT NULL, version BIGINT NOT NULL)");
        records->run("INSERT INTO writing(turn, version) VALUES(0, 0) ON CONFLICT DO NOTHING");
        records->run("COMMIT");
        prepared_ = true;
    }
    return records;
}

std::unique_ptr<Records> PostgresEngine::connect_to_read() { return std::make_unique<PostgresRecords>(url_); }

}  // namespace truehang::workroom
