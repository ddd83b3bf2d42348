// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/digest.h"
#include "protocol/time_text.h"
#include "units/result.h"
#include "workroom/http/http_server.h"

#include <atomic>
#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <string_view>

// Photos on their way in in pieces: a file each, `DEVICE/SHA256-LENGTH`, whose length is the byte where the upload
// stands. Nothing else is written down of it, so nothing can contradict the file. What is told as there was synced
// before. A file that a crash left longer than was told holds bytes of the same photo; should a disk that lost its
// power have put others there, the digest of the whole finds it, and the upload begins anew.

namespace truehang::workroom {

/// Whose upload, and of which photo.
struct UploadKey {
    std::string device;
    std::string sha256;
};

/// How an upload stands.
struct UploadState {
    long long offset = 0;  ///< bytes that are on the disk
    long long length = 0;  ///< bytes that it was begun for
    std::chrono::seconds left{0};
    bool was_there = false;  ///< of `begin`: it had been begun before
};

/// What two pieces of one upload mustn't do at once.
struct UploadGate {
    std::mutex mutex;
    std::atomic<std::uint64_t> holder{0};  ///< the piece that may write; 0: none
};

/// One piece on its way in; appended as it comes, so that what came before a cut is kept. Once another has taken the
/// upload away it takes no more.
class PieceIntake final : public http::BodySink {
public:
    PieceIntake(std::shared_ptr<UploadGate> gate, std::uint64_t number, std::filesystem::path file, int descriptor,
                long long offset, std::optional<sync::Sha256> digest);
    ~PieceIntake() override;
    PieceIntake(const PieceIntake&) = delete;
    PieceIntake& operator=(const PieceIntake&) = delete;

    [[nodiscard]] bool take(std::string_view piece) override;

    /// Brings what came to the disk: the byte where the upload now stands. `conflict` where the upload was taken away
    /// meanwhile, `unreadable` where the piece has another digest than was told (nothing of it is kept), `full`, `io`.
    [[nodiscard]] Result<long long> finish();
    /// Once finished, and whole: puts the photo in its place by way of `beside`, a name of the same file system that
    /// nothing has. The upload's own file stays until it is forgotten. `unreadable` where the digest is another (the
    /// upload is gone then), `missing` where the upload was taken away, `full`, `io`.
    [[nodiscard]] Result<Done> put(const std::string& sha256, const std::filesystem::path& beside,
                                   const std::filesystem::path& place);
    /// Another piece may come: to be called before the answer is heard, which the next piece may follow at once.
    void let_go();

private:
    [[nodiscard]] bool holds() const { return gate_->holder.load() == number_; }
    [[nodiscard]] Result<std::string> digest_of_all() const;
    [[nodiscard]] bool is_this_file(const std::filesystem::path& file) const;

    std::shared_ptr<UploadGate> gate_;
    std::uint64_t number_;
    std::filesystem::path file_;
    int descriptor_;
    long long begin_;
    long long end_;
    std::optional<sync::Sha256> digest_;  ///< of the piece, where it was told
    sync::Sha256Stream hash_;
    std::optional<Error> fault_;
};

/// The unfinished uploads. Safe from several threads; other processes may only take files away.
class UploadShelf {
public:
    using Clock = std::function<sync::Time()>;

    UploadShelf(std::filesystem::path folder, Clock clock);

    /// Begins an upload, or finds the one that was begun. `conflict` where it was begun for another length,
    /// `out_of_range` where the device has as much unfinished as it may (`uploads_at_once`, `unfinished_limit`),
    /// `full`, `io`.
    [[nodiscard]] Result<UploadState> begin(const UploadKey& key, long long length);
    /// How it stands, on the disk; nothing where there is none. A piece that is still under way is ended: who asks has
    /// given it up.
    [[nodiscard]] Result<std::optional<UploadState>> look(const UploadKey& key);
    /// The same without ending anything, or looking whether it is on the disk.
    [[nodiscard]] std::optional<UploadState> glance(const UploadKey& key) const;

    /// What a piece that begins at `offset` may do.
    struct Piece {
        std::shared_ptr<PieceIntake> intake;  ///< null where it mustn't
        std::optional<UploadState> state;     ///< nothing: there is no such upload
        bool under_way = false;               ///< another piece is
    };
    [[nodiscard]] Result<Piece> open_piece(const UploadKey& key, long long offset,
                                           std::optional<sync::Sha256> digest = std::nullopt);

    /// False where there was none.
    bool forget(const UploadKey& key);
    /// Takes away what has waited for longer than `upload_life`.
    void sweep();
    /// The photos of which something lies here, each once.
    [[nodiscard]] std::set<std::string> digests() const;

private:
    struct Found {
        std::filesystem::path file;
        UploadState state;
    };
    [[nodiscard]] std::optional<Found> find(const UploadKey& key) const;
    [[nodiscard]] std::shared_ptr<UploadGate> gate_of(const UploadKey& key);
    [[nodiscard]] bool has_room(const std::filesystem::path& device, long long length) const;
    [[nodiscard]] std::optional<UploadState> state_of(const std::filesystem::path& file) const;

    std::filesystem::path folder_;
    Clock clock_;
    std::atomic<std::uint64_t> pieces_{0};
    std::mutex mutex_;  ///< of `gates_`, and of beginning
    std::map<std::string, std::weak_ptr<UploadGate>> gates_;
};

/// Takes away every device's unfinished upload of a photo. False where one couldn't be.
bool remove_uploads_of(const std::filesystem::path& uploads, std::string_view sha256);
/// Takes away whatever a device has unfinished.
void remove_uploads_from(const std::filesystem::path& uploads, const std::string& device);

/// What lies there unfinished.
struct UnfinishedUploads {
    std::size_t uploads = 0;
    long long bytes = 0;
};
[[nodiscard]] UnfinishedUploads unfinished_in(const std::filesystem::path& uploads);

}  // namespace truehang::workroom
