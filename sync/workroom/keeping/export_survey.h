// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/keeping/kept_records.h"
#include "workroom/keeping/verify.h"

#include <filesystem>
#include <string>
#include <vector>

namespace truehang::workroom {

struct Exported {
    std::size_t revisions = 0, rolls = 0, photos = 0;
    std::size_t missing = 0;  ///< photos that it names and that never came
    std::vector<Flaw> flaws;  ///< photos that were left out because they aren’t whole
};

/// Everything of one survey as one file (`survey_zip.h`), the same bytes whichever engine keeps it. Errors: `missing`
/// where there is no such survey, and as `write_survey_zip`.
[[nodiscard]] Result<Exported> export_survey(KeptRecords& kept, const std::string& survey,
                                             const std::filesystem::path& file);

/// The newest revision with its photos as the app takes it in (`store/visit_file.h`).
[[nodiscard]] Result<Exported> export_visit(KeptRecords& kept, const std::string& survey,
                                            const std::filesystem::path& file);

}  // namespace truehang::workroom
