// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <cstdint>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

// The workroom's records behind one face, whichever engine keeps them: one SQLite file, or a PostgreSQL database that
// several receivers share. SQL is written once, in what both understand: `?` or `?N` for what is bound, ON CONFLICT
// for what may be there, no row numbers, an upper end of a range worked out beforehand. Text compares byte by byte.

namespace truehang::workroom {

/// What an engine throws where a statement fails; `Database` turns it into its `Error`.
class RecordsFault : public std::runtime_error {
public:
    explicit RecordsFault(Error error) : std::runtime_error(error.text), error_(std::move(error)) {}
    [[nodiscard]] const Error& error() const { return error_; }

private:
    Error error_;
};

/// One statement of an engine and the row it stands on. Places are bound from 1, columns read from 0.
class Rows {
public:
    virtual ~Rows() = default;
    virtual void bind(int place, std::int64_t number) = 0;
    virtual void bind(int place, std::string_view text) = 0;
    virtual void bind_bytes(int place, std::string_view bytes) = 0;
    /// Goes to the next row, the first time to the first; false behind the last.
    virtual bool step() = 0;
    /// Runs it to its end: the number of rows that it changed.
    virtual long long exec() = 0;
    /// Begins anew; what is bound stays until it is bound again.
    virtual void reset() = 0;
    [[nodiscard]] virtual bool is_null(int column) const = 0;
    [[nodiscard]] virtual std::int64_t number(int column) const = 0;  ///< of a truth value 1 or 0
    [[nodiscard]] virtual std::string text(int column) const = 0;     ///< of bytes the bytes
};

/// One connection to the records, for one thread at a time.
class Records {
public:
    virtual ~Records() = default;
    Records() = default;
    Records(const Records&) = delete;
    Records& operator=(const Records&) = delete;

    [[nodiscard]] virtual std::unique_ptr<Rows> prepare(const std::string& sql) = 0;
    /// Runs statements that bind and return nothing.
    virtual void run(const std::string& sql) = 0;
    /// Begins a transaction that is alone in writing until it ends, over all receivers; waits for another's end.
    virtual void begin_writing() = 0;
    /// Begins one that sees one state of the records throughout, and is rolled back.
    virtual void begin_reading() = 0;
    /// False where a fault ended the transaction itself: nothing of it stands.
    [[nodiscard]] virtual bool in_transaction() const = 0;
    /// False where the connection is gone for good and another must be made.
    [[nodiscard]] virtual bool is_alive() const { return true; }
    [[nodiscard]] virtual bool has_table(const std::string& name) = 0;
    /// Tables with a column of that name, by name.
    [[nodiscard]] virtual std::vector<std::string> tables_with(const std::string& column) = 0;
    /// Writes anew what rows that were deleted may still stand in; outside of transactions. False where somebody else’s
    /// reading hindered it.
    [[nodiscard]] virtual bool overwrite_freed() = 0;
    /// The version of the tables that are there; 0 where there are none yet.
    [[nodiscard]] virtual int version() = 0;
    virtual void set_version(int version) = 0;
    /// The workroom’s CREATE and ALTER statements (archive/schema.h) as this engine takes them.
    [[nodiscard]] virtual std::string own_words(std::string definitions) const { return definitions; }
    /// True where photos' bytes are kept in these records too, not as files.
    [[nodiscard]] virtual bool hold_photos() const { return false; }
};

/// Makes connections. Throws what its `Records` throw.
class RecordsEngine {
public:
    virtual ~RecordsEngine() = default;
    [[nodiscard]] virtual std::unique_ptr<Records> connect_to_write() = 0;
    [[nodiscard]] virtual std::unique_ptr<Records> connect_to_read() = 0;
};

/// A statement with what is bound to it.
class Query {
public:
    Query(Records& records, const std::string& sql) : rows_(records.prepare(sql)) {}

    void bind(int place, std::int64_t number) { rows_->bind(place, number); }
    void bind(int place, long long number) { rows_->bind(place, static_cast<std::int64_t>(number)); }
    void bind(int place, int number) { rows_->bind(place, static_cast<std::int64_t>(number)); }
    void bind(int place, std::size_t number) { rows_->bind(place, static_cast<std::int64_t>(number)); }
    void bind(int place, std::string_view text) { rows_->bind(place, text); }
    void bind_bytes(int place, std::string_view bytes) { rows_->bind_bytes(place, bytes); }
    bool step() { return rows_->step(); }
    long long exec() { return rows_->exec(); }
    void reset() { rows_->reset(); }
    [[nodiscard]] bool is_null(int column) const { return rows_->is_null(column); }
    [[nodiscard]] std::int64_t number(int column) const { return rows_->number(column); }
    [[nodiscard]] std::string text(int column) const { return rows_->text(column); }

private:
    std::unique_ptr<Rows> rows_;
};

/// The first column of the first row; 0 or empty where there is no row.
[[nodiscard]] std::int64_t number_of(Records& records, const std::string& sql);
[[nodiscard]] std::string text_of(Records& records, const std::string& sql);

/// A transaction that is rolled back at its end unless it was committed.
class Transaction {
public:
    enum class Use { reading, writing };
    Transaction(Records& records, Use use);
    /// Sees to the end of one that was begun already.
    [[nodiscard]] static Transaction taken_over(Records& records) { return Transaction(records); }
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    void commit();

private:
    explicit Transaction(Records& records) : records_(records) {}

    Records& records_;
    bool ended_ = false;
};

/// A table’s name as SQL takes it, whatever it holds.
[[nodiscard]] std::string quoted_name(const std::string& name);

/// Bytes beyond which no text goes that begins with `beginning`, as both engines compare it.
[[nodiscard]] std::string end_of_beginning(std::string_view beginning);

}  // namespace truehang::workroom
