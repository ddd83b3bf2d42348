// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/salvage.h"

#include "workroom/keeping/kept_folder.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <string>
#include <vector>

namespace truehang::workroom {

namespace {

struct Table {
    std::string name;
    std::vector<std::string> columns;
    bool row_numbers = false;  ///< its rows have numbers of their own that no column tells
    bool by_number = false;    ///< its rows stand in the order of their numbers
};

std::vector<Table> tables_of(SQLite::Database& from) {
    std::vector<Table> tables;
    SQLite::Statement names(from,
                            "SELECT name, wr FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
                            "AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'");
    while (names.executeStep()) {
        Table table{names.getColumn(0).getString(), {}, names.getColumn(1).getInt() == 0, false};
        table.by_number = table.row_numbers;
        SQLite::Statement columns(from, "SELECT name, pk FROM pragma_table_info(?)");
        columns.bind(1, table.name);
        while (columns.executeStep()) {
            table.columns.push_back(quoted_name(columns.getColumn(0).getString()));
            table.row_numbers = table.row_numbers && columns.getColumn(1).getInt() == 0;
        }
        if (table.row_numbers) {
            table.columns.insert(table.columns.begin(), "rowid");
        }
        tables.push_back(std::move(table));
    }
    return tables;
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const auto& name : names) {
        text += (text.empty() ? "" : ", ") + name;
    }
    return text;
}

void make_tables(SQLite::Database& from, SQLite::Database& to) {
    SQLite::Statement made(from,
                           "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite\\_%' "
                           "ESCAPE '\\' ORDER BY type = 'table' DESC");
    while (made.executeStep()) {
        to.exec(made.getColumn(0).getString());
    }
    to.exec(fmt::format("PRAGMA user_version = {}", from.execAndGet("PRAGMA user_version").getInt()));
}

void copy_row(SQLite::Statement& row, SQLite::Statement& insert) {
    insert.reset();
    for (int i = 0; i < row.getColumnCount(); ++i) {
        const auto value = row.getColumn(i);
        if (value.isInteger()) {
            insert.bind(i + 1, value.getInt64());
        } else if (value.isFloat()) {
            insert.bind(i + 1, value.getDouble());
        } else if (value.isBlob()) {
            insert.bind(i + 1, value.getBlob(), value.getBytes());
        } else if (value.isText()) {
            insert.bind(i + 1, value.getString());
        } else {
            insert.bind(i + 1);
        }
    }
    insert.exec();
}

/// Until the end or the damage, whichever comes first.
void copy_rows(SQLite::Database& from, SQLite::Database& to, const Table& table, const char* direction) {
    try {
        SQLite::Statement rows(from, fmt::format("SELECT {} FROM {} ORDER BY {}{}", joined(table.columns),
                                                 quoted_name(table.name), table.by_number ? "rowid" : "1", direction));
        std::string places;
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            places += i == 0 ? "?" : ", ?";
        }
        SQLite::Statement insert(to, fmt::format("INSERT OR IGNORE INTO {}({}) VALUES({})", quoted_name(table.name),
                                                 joined(table.columns), places));
        while (rows.executeStep()) {
            copy_row(rows, insert);
        }
    } catch (const SQLite::Exception& thrown) {
        if (thrown.getErrorCode() != SQLITE_CORRUPT) {
            throw;
        }
    }
}

}  // namespace

void salvage(SQLite::Database& from, SQLite::Database& to) {
    to.exec("PRAGMA foreign_keys = OFF");
    SQLite::Transaction all(to);
    make_tables(from, to);
    for (const Table& table : tables_of(from)) {
        copy_rows(from, to, table, "");
        copy_rows(from, to, table, " DESC");
    }
    all.commit();
}

}  // namespace truehang::workroom
