// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

// What the workroom asks about visits that are here, and what is answered. Records are added and never changed.

namespace truehang {

/// An answer to a question: words, a reading, or both.
struct VisitAnswer {
    std::string visit;
    long long number = 0;  ///< of the question
    std::string id;        ///< made once by whoever answers
    std::string words;     ///< may be empty where there is a reading
    std::string station;   ///< of the reading; empty: none
    std::string typed;     ///< the reading as a person wrote it, with its unit
    std::string by;        ///< who answers; may be empty
    std::string at;        ///< RFC 3339, by the clock of whoever answers
    std::string device;    ///< name of the device that it came from; empty: this one, or not known
    std::string record;    ///< the bytes to be sent, of an answer given here; empty: it came
    friend bool operator==(const VisitAnswer&, const VisitAnswer&) = default;
};

/// A question about a window, or about one reading of it.
struct VisitQuestion {
    std::string visit;
    long long number = 0;  ///< from 1, rising in a visit
    std::string room;
    std::string window;
    std::string station;  ///< empty: about the whole window
    std::string words;
    std::string by;                         ///< who asks
    std::string at;                         ///< RFC 3339
    std::vector<VisitAnswer> answers = {};  ///< in the order in which they were kept; none: it is open
    friend bool operator==(const VisitQuestion&, const VisitQuestion&) = default;
};

}  // namespace truehang
