// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/paths.h"
#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"
#include "workroom/people/door.h"

#include <string>
#include <string_view>

namespace truehang::workroom {

/// The page `/surveys/ID/ask` for one that may look (in its query `about`, and `by` as typed before), or what becomes
/// of its form for one that may ask: `about`, `words`, `revision`, and `by` where nobody is signed in by name.
[[nodiscard]] http::Response answer_questions(Archive& archive, const http::Request& request, const Caller& caller);

/// Whether an answer may be sent.
[[nodiscard]] http::Admission admit_answer(const Result<TokenHolder>& device, const http::RequestHead& head);
/// Keeps what a device of that id answers.
void take_answer(Archive& archive, const sync::Place& place, std::string_view body, std::string device,
                 const http::Site::Respond& respond);

/// Answers to `GET /questions` and `GET /surveys/{id}/questions`.
[[nodiscard]] http::Response questions_reply(Archive& archive, const sync::Place& place, const http::RequestHead& head);

}  // namespace truehang::workroom
