// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/paths.h"
#include "units/result.h"
#include "workroom/archive/access.h"
#include "workroom/archive/archive.h"
#include "workroom/archive/upload_shelf.h"
#include "workroom/http/http_server.h"

#include <atomic>

namespace truehang::workroom {

/// Photos that come in pieces (draft-ietf-httpbis-resumable-upload-12): each device has its own uploads, named by the
/// photo's digest, and sees no other's.
class UploadDesk {
public:
    using Respond = http::Site::Respond;
    using Holder = Result<TokenHolder>;

    explicit UploadDesk(Archive& archive);

    /// Whether a request is about an upload: anything under its path, and the POST that begins one.
    [[nodiscard]] static bool takes(const sync::Place& place, const http::RequestHead& head);
    [[nodiscard]] http::Admission admit(const sync::Place& place, const http::RequestHead& head, const Holder& holder);
    void answer(const sync::Place& place, const http::Request& request, const Holder& holder, const Respond& respond);

    /// Once an hour takes away what has waited too long, and what was erased by way of another receiver of the same
    /// database.
    void sweep_due();

private:
    [[nodiscard]] http::Admission admit_beginning(const http::RequestHead& head) const;
    [[nodiscard]] http::Admission admit_piece(const UploadKey& key, const http::RequestHead& head);
    [[nodiscard]] http::Response begin(const UploadKey& key, const http::RequestHead& head);
    [[nodiscard]] http::Response tell(const UploadKey& key);
    [[nodiscard]] http::Response tell_kept(const UploadKey& key) const;
    void take_piece(const UploadKey& key, const http::Request& request, const Respond& answered);
    void complete(const UploadKey& key, PieceIntake& piece, long long bytes, const Respond& respond);
    [[nodiscard]] http::Response moved_on(const UploadKey& key, const http::RequestHead& head);

    Archive& archive_;
    UploadShelf shelf_;
    std::atomic<sync::Time> swept_{sync::Time()};
};

}  // namespace truehang::workroom
