// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/keeping/kept_records.h"

#include <string>
#include <vector>

namespace truehang::workroom {

/// One thing that isn't as it was received.
struct Flaw {
    enum class Of { records, database, document, photo, rolls, mark, question, rules };
    Of of = Of::records;
    std::string survey;    ///< of a document, rolls, a mark or a question
    long long number = 0;  ///< revision of a document, version of rolls or rules, number of a mark or a question
    std::string sha256;    ///< of a photo
    std::string text;      ///< one sentence
    std::string answer{};  ///< id of a question’s answer; empty: the question itself
};

/// Where a flaw lies, for a person: `revision 2 of ID`.
[[nodiscard]] std::string place_of(const Flaw& flaw);

/// What was looked at, and what of it isn't whole.
struct Looked {
    long long documents = 0, photos = 0, rolls = 0, rules = 0;
    long long photo_bytes = 0;
    std::vector<Flaw> flaws;
    std::vector<std::string> loose;  ///< among the photos what no record tells of; no fault
};

/// Looks through all that is kept: the records' own structure, each document (its digest, that it reads as a survey),
/// each photo (there, its length, its digest), rolls and house rules. What is received or erased meanwhile is no fault.
/// Of a database, its own pages are its own to check. Errors: as `KeptRecords::open`.
[[nodiscard]] Result<Looked> look_through(KeptRecords& kept);
[[nodiscard]] Result<Looked> look_through(KeptFolder& folder);

/// "12 documents, 30 photos (45.2 MB), 3 versions of rolls, 1 of house rules".
[[nodiscard]] std::string amounts(const Looked& looked);

}  // namespace truehang::workroom
