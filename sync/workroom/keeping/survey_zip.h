// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <cstddef>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

// One survey as a zip (PKWARE APPNOTE 6.3): `revisions/N.json` as they were received, `rolls/N.json`, `marks.json`,
// `questions.json`, `receipts.json`, and `photos/<sha256>.<ending>`. A visit's file, as the app writes it, has one
// `survey.json` in place of the revisions.

namespace truehang::workroom {

inline constexpr std::size_t revisions_limit = 10'000;  ///< in one zip; of rolls as many

/// What is packed.
struct SurveyToPack {
    struct Text {
        std::string name;
        std::string bytes;
    };
    struct Photo {
        std::string name;
        std::filesystem::path file;
        long long bytes = 0;
    };
    std::vector<Text> texts;
    std::vector<Photo> photos;
};

/// Writes it beside its place, takes it to the disk and gives it its name. Errors: `conflict` where the name is taken,
/// `out_of_range` for more than may be taken in again (2 GiB, 5,000 photos), `full`, `io`; nothing is left then.
[[nodiscard]] Result<Done> write_survey_zip(const std::filesystem::path& file, const SurveyToPack& survey);

/// A zip of either kind whose list of entries is sound: only names as above, each once, stored or deflated, not locked,
/// within the limits (document 4 MiB, photo 32 MiB, all together 2 GiB).
class SurveyZip {
public:
    struct Entry {
        std::string name;
        std::size_t index = 0;
        long long bytes = 0;
    };

    /// Errors: `missing`, `unreadable`, `out_of_range`; they name the entry.
    [[nodiscard]] static Result<SurveyZip> open(const std::filesystem::path& file);

    /// Revisions by their number; 0 for that of `survey.json`.
    [[nodiscard]] const std::map<long long, Entry>& revisions() const { return revisions_; }
    [[nodiscard]] const std::map<long long, Entry>& rolls() const { return rolls_; }
    /// Photos by the digest that their name tells.
    [[nodiscard]] const std::map<std::string, Entry>& photos() const { return photos_; }
    [[nodiscard]] const std::unique_ptr<Entry>& receipts() const { return receipts_; }
    /// What was asked and answered.
    [[nodiscard]] const std::unique_ptr<Entry>& questions() const { return questions_; }
    /// What was marked as done with the layers.
    [[nodiscard]] const std::unique_ptr<Entry>& marks() const { return marks_; }

    /// Hands an entry's bytes on in pieces, exactly as many as it says; false from `take` ends it. Error `damaged`.
    [[nodiscard]] Result<Done> unpack(const Entry& entry, const std::function<bool(std::string_view)>& take) const;
    [[nodiscard]] Result<std::string> text_of(const Entry& entry) const;

private:
    struct Opened;
    explicit SurveyZip(std::shared_ptr<Opened> opened) : opened_(std::move(opened)) {}
    [[nodiscard]] Result<Done> list();
    [[nodiscard]] Result<Done> place(Entry entry);

    std::shared_ptr<Opened> opened_;
    std::map<long long, Entry> revisions_, rolls_;
    std::map<std::string, Entry> photos_;
    std::unique_ptr<Entry> receipts_, marks_, questions_;
};

}  // namespace truehang::workroom
