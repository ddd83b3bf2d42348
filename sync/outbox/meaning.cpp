// SPDX-License-Identifier: Apache-2.0
#include "outbox/meaning.h"

#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/problem.h"
#include "protocol/questions.h"
#include "protocol/records.h"
#include "protocol/time_text.h"

#include <fmt/format.h>

#include <charconv>

namespace truehang::sync {

namespace {

Meaning confirmed(const Item& item, const std::string& received_at) {
    Meaning meaning;
    meaning.kind = Meaning::Kind::confirmed;
    meaning.receipt = {item.sha256, received_at};
    return meaning;
}

Meaning with_reason(Meaning::Kind kind, std::string why) {
    Meaning meaning;
    meaning.kind = kind;
    meaning.why = std::move(why);
    return meaning;
}

Meaning refused(Meaning::Kind kind, std::string why, std::string what_to_do) {
    Meaning meaning = with_reason(kind, why);
    meaning.refusal = {std::move(why), std::move(what_to_do)};
    return meaning;
}

std::string faults_text(const Problem& problem) {
    std::string text;
    for (std::size_t i = 0; i < problem.faults.size() && i < 3; ++i) {
        text += fmt::format("{}\"{}\": {}", i == 0 ? "" : "; ", problem.faults[i].pointer, problem.faults[i].text);
    }
    return problem.faults.size() > 3 ? text + fmt::format("; and {} more", problem.faults.size() - 3) : text;
}

Meaning conflict(const Item& item, const Problem& problem) {
    if (item.kind == ItemKind::answer) {
        return refused(Meaning::Kind::refused, "The workroom doesn’t take another answer to this question.",
                       "Look at the question on the workroom’s page, or ask there. The answer is still here.");
    }
    if (problem.there && problem.there->newest.id == item.survey && !problem.there->common_sha256.empty()) {
        Meaning meaning = with_reason(Meaning::Kind::stale, "Somebody else sent this visit meanwhile.");
        meaning.there = *problem.there;
        return meaning;
    }
    if (problem.there && problem.there->newest.revision != item.revision) {
        return refused(
            Meaning::Kind::refused,
            fmt::format("The workroom has revision {} of this survey, and nothing says what both were made from.",
                        problem.there->newest.revision),
            "Look at both, there and here. Nothing of either is lost; they can’t be put together by themselves.");
    }
    return refused(
        Meaning::Kind::refused,
        fmt::format("The workroom has revision {} of this survey already, with other content.", item.revision),
        "Open the survey, check it, and send it as a new revision. Both stay as they are until then.");
}

Meaning of_refusal(const Item& item, const Problem& problem) {
    const auto suspect = Meaning::Kind::suspect;
    switch (problem.kind) {
        case ProblemKind::conflict:
            return conflict(item, problem);
        case ProblemKind::erased:
            return refused(
                Meaning::Kind::refused,
                item.kind == ItemKind::photo ? "The workroom erased this photo’s visit for good."
                                             : "The workroom erased this visit for good.",
                "Nothing more of it is taken there. Ask the workroom before you keep it here, or remove it.");
        case ProblemKind::malformed_document:
            return refused(Meaning::Kind::refused,
                           (item.kind == ItemKind::answer ? "The workroom can’t read this answer: "
                                                          : "The workroom can’t read this survey: ") +
                               faults_text(problem) + ".",
                           "Correct what is named, then send again. Everything is still here.");
        case ProblemKind::too_large:
            return refused(Meaning::Kind::refused, "It is larger than the workroom takes.",
                           item.kind == ItemKind::photo ? "Hand the photo over as a file, or take a smaller one."
                                                        : "Hand the survey over as a file, or split the visit.");
        case ProblemKind::digest_mismatch:
            return refused(suspect, "The bytes that reached the workroom aren’t the ones that were kept here.",
                           item.kind == ItemKind::photo
                               ? "Look at the photo here; take it again if it is damaged."
                               : "Send again over another network, or hand it over as a file.");
        default:
            return refused(suspect, "The workroom can’t read what is sent: " + problem.detail,
                           "Check that this device and the workroom run versions that fit, then send again.");
    }
}

Meaning of_problem(const Item& item, const Problem& problem, const Answer& answer) {
    switch (problem.kind) {
        case ProblemKind::unauthorised:
            return with_reason(Meaning::Kind::pair_again, "The workroom doesn’t know this device. Pair it again.");
        case ProblemKind::conflict:
        case ProblemKind::erased:
        case ProblemKind::malformed_document:
        case ProblemKind::too_large:
        case ProblemKind::digest_mismatch:
        case ProblemKind::malformed_request:
            return of_refusal(item, problem);
        case ProblemKind::busy:
        case ProblemKind::too_many_tries:
        case ProblemKind::disk_full: {
            Meaning meaning = with_reason(Meaning::Kind::wait, problem.detail);
            meaning.retry_after = retry_after(answer);
            return meaning;
        }
        case ProblemKind::not_there:
            return item.kind == ItemKind::answer
                       ? refused(Meaning::Kind::refused, "The workroom doesn’t know this question.",
                                 "It may be another workroom than the one that asked. The answer is still here.")
                       : with_reason(Meaning::Kind::item_failed, problem.detail);
        default:
            return with_reason(Meaning::Kind::item_failed, problem.detail);
    }
}

}  // namespace

Meaning meaning_of_nonsense(const Answer& answer) {
    return with_reason(
        Meaning::Kind::nonsense,
        fmt::format("Something answered ({}) that isn’t the workroom. It will be tried again.", answer.status));
}

Meaning meaning_of_trouble(const Item& item, const Answer& answer) {
    if (const auto problem = read_problem(answer.content); problem && status_of(problem->kind) == answer.status) {
        return of_problem(item, *problem, answer);
    }
    if (answer.status == 429 || answer.status == 503) {
        Meaning meaning = with_reason(Meaning::Kind::wait, "The workroom, or something before it, is busy.");
        meaning.retry_after = retry_after(answer);
        return meaning;
    }
    return meaning_of_nonsense(answer);
}

std::optional<std::chrono::milliseconds> retry_after(const Answer& answer) {
    const auto field = answer.header("Retry-After");
    if (!field) {
        return std::nullopt;
    }
    std::uint32_t seconds = 0;
    const auto [end, fault] = std::from_chars(field->data(), field->data() + field->size(), seconds);
    if (fault == std::errc{} && end == field->data() + field->size() && !field->empty()) {
        return std::chrono::milliseconds(1000LL * seconds);
    }
    const auto until = read_http_date(*field);
    const auto now = read_http_date(answer.header("Date").value_or(""));
    if (!until || !now) {
        return std::nullopt;
    }
    return std::max(std::chrono::milliseconds(0), *until - *now);
}

Meaning meaning_of_send(const Item& item, const Answer& answer) {
    if (answer.status != 200 && answer.status != 201) {
        return meaning_of_trouble(item, answer);
    }
    if (item.kind == ItemKind::survey) {
        const auto receipt = read_survey_receipt(answer.content);
        const bool this_one = receipt && receipt->id == item.survey && receipt->revision == item.revision &&
                              receipt->sha256 == item.sha256;
        return this_one ? confirmed(item, receipt->received_at) : meaning_of_nonsense(answer);
    }
    if (item.kind == ItemKind::answer) {
        const auto receipt = read_answer_receipt(answer.content);
        const bool this_one =
            receipt && receipt->survey == item.survey && receipt->number == item.question && receipt->id == item.answer;
        return this_one ? confirmed(item, receipt->received_at) : meaning_of_nonsense(answer);
    }
    const auto receipt = read_photo_receipt(answer.content);
    const bool this_one = receipt && receipt->sha256 == item.sha256 && receipt->bytes == item.bytes;
    return this_one ? confirmed(item, receipt->received_at) : meaning_of_nonsense(answer);
}

Meaning meaning_of_photo_there(const Item& item, const Answer& answer) {
    const auto digest = read_digest_field(answer.header(repr_digest_header).value_or(""));
    const auto received_at = answer.header(received_at_header);
    const bool this_one = digest && *digest && hex(**digest) == item.sha256 && received_at;
    return this_one ? confirmed(item, std::string(*received_at)) : meaning_of_nonsense(answer);
}

namespace {

Meaning meaning_of_photo_ask(const Item& item, const Answer& answer) {
    if (answer.status == 200) {
        return meaning_of_photo_there(item, answer);
    }
    // An answer to HEAD has no body to say whose it is: anything but a failure is settled by sending.
    return answer.status < 500 ? with_reason(Meaning::Kind::absent, "") : meaning_of_trouble(item, answer);
}

}  // namespace

Meaning meaning_of_ask(const Item& item, const Answer& answer) {
    if (item.kind == ItemKind::photo) {
        return meaning_of_photo_ask(item, answer);
    }
    if (answer.status == 200) {
        const auto there = read_survey_there(answer.content);
        if (!there || there->id != item.survey) {
            return meaning_of_nonsense(answer);
        }
        for (const auto& receipt : there->revisions) {
            if (receipt.revision == item.revision) {
                return receipt.sha256 == item.sha256 ? confirmed(item, receipt.received_at)
                                                     // Sent once more, it is answered with what is there.
                                                     : with_reason(Meaning::Kind::absent, "");
            }
        }
        return with_reason(Meaning::Kind::absent, "");
    }
    const auto problem = read_problem(answer.content);
    if (answer.status == 404 && problem && problem->kind == ProblemKind::not_there) {
        return with_reason(Meaning::Kind::absent, "");
    }
    return meaning_of_trouble(item, answer);
}

Meaning meaning_of_fetch(const Item& item, const std::string& sha256_hex, const Answer& answer) {
    if (answer.status == 200) {
        if (hex(sha256(answer.content)) != sha256_hex) {
            return meaning_of_nonsense(answer);
        }
        Meaning meaning;
        meaning.kind = Meaning::Kind::fetched;
        meaning.document = answer.content;
        return meaning;
    }
    const auto problem = read_problem(answer.content);
    if (answer.status == 404 && problem && problem->kind == ProblemKind::not_there) {
        return with_reason(Meaning::Kind::absent, "");
    }
    return meaning_of_trouble(item, answer);
}

}  // namespace truehang::sync
