// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "faults.h"

#include "outbox/wire.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"

#include <functional>
#include <map>
#include <string>
#include <vector>

// Two receivers on one database, as the protocol says that they answer. What is in `Records` is committed; what a
// request would write is handed back as `write`, so that its caller says when it commits, or that it never does.

namespace truehang::sync::simulation {

struct KeptRevision {
    SurveyReceipt receipt;
    std::string bytes;
    std::vector<std::string> parents;
};

struct Records {
    std::map<std::string, std::map<long long, KeptRevision>> surveys;  ///< by id and revision
    std::map<std::string, std::string> photos;                         ///< bytes by digest
    std::map<long long, SurveyReceipt> changes;                        ///< by place, in the order of commits
};

class WorkroomModel {
public:
    static constexpr int receivers = 2;

    explicit WorkroomModel(Bug bug) : bug_(bug) {}

    /// What a request comes to as the records stand now.
    struct Outcome {
        Answer answer;
        std::function<void()> write;  ///< empty: nothing is to be written
    };
    /// `body` is shorter than the request says where the wire was cut.
    [[nodiscard]] Outcome look(int receiver, const Request& request, const std::string& body);

    /// What came in after a place, at most three at once, and the place to ask with next.
    [[nodiscard]] std::pair<std::vector<SurveyReceipt>, long long> changes_after(long long place) const;

    [[nodiscard]] const Records& records() const { return records_; }
    [[nodiscard]] const KeptRevision& newest(const std::string& survey) const {
        return records_.surveys.at(survey).rbegin()->second;
    }

private:
    struct Upload {
        std::string came;
        long long length = 0;
    };
    Outcome put_survey(const Place& place, const std::string& body);
    Outcome keep_revision(const Place& place, KeptRevision kept);
    [[nodiscard]] Answer stale(const Place& place, const std::vector<std::string>& parents) const;
    Outcome put_photo(const std::string& sha256, const Request& request, const std::string& body);
    Outcome keep_photo(const std::string& sha256, std::string bytes);
    [[nodiscard]] Answer receipts(const std::string& survey) const;
    [[nodiscard]] Answer document(const Place& place) const;
    [[nodiscard]] Answer ask_photo(const std::string& sha256) const;
    Answer begin(int receiver, const std::string& sha256, const Request& request);
    Answer ask_upload(int receiver, const std::string& sha256);
    Outcome take_piece(int receiver, const std::string& sha256, const Request& request, const std::string& body);

    Bug bug_;
    Records records_;
    long long places_ = 0;
    std::map<std::string, Upload> uploads_[receivers];  ///< each on its own disk, by digest
};

/// An answer that reports a problem.
[[nodiscard]] Answer problem_answer(const Problem& problem);

}  // namespace truehang::sync::simulation
