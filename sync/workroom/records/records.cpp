// SPDX-License-Identifier: Apache-2.0
#include "workroom/records/records.h"

namespace truehang::workroom {

std::int64_t number_of(Records& records, const std::string& sql) {
    Query query(records, sql);
    return query.step() ? query.number(0) : 0;
}

std::string text_of(Records& records, const std::string& sql) {
    Query query(records, sql);
    return query.step() ? query.text(0) : std::string();
}

Transaction::Transaction(Records& records, Use use) : records_(records) {
    if (use == Use::writing) {
        records_.begin_writing();
    } else {
        records_.begin_reading();
    }
}

Transaction::~Transaction() {
    if (ended_ || !records_.in_transaction()) {
        return;
    }
    try {
        records_.run("ROLLBACK");
    } catch (const std::exception&) {
        return;  // the connection is gone, and the transaction with it
    }
}

void Transaction::commit() {
    records_.run("COMMIT");
    ended_ = true;
}

std::string quoted_name(const std::string& name) {
    std::string quoted = "\"";
    for (const char c : name) {
        quoted += c == '"' ? "\"\"" : std::string(1, c);
    }
    return quoted + "\"";
}

std::string end_of_beginning(std::string_view beginning) {
    return std::string(beginning) + "\xF4\x8F\xBF\xBF";  // U+10FFFF, the last character there is
}

}  // namespace truehang::workroom
