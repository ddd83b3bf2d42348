// SPDX-License-Identifier: Apache-2.0
#include "picture_memory.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

constexpr int side_read_limit = 30'000;  // of the file's picture, each way
constexpr qint64 pixel_bytes = 4;
constexpr int jpeg_steps = 8;  // libjpeg reads at eighths of a side

qint64 pixels_of(const QSize& size) { return qint64{size.width()} * size.height(); }

/// The pixels that libjpeg gives before they are made to fit `wanted`: the next eighth above.
qint64 pixels_read(const QSize& size, const QSize& wanted) {
    const double times = std::min(static_cast<double>(size.width()) / wanted.width(),
                                  static_cast<double>(size.height()) / wanted.height());
    const int step = std::clamp(static_cast<int>(std::ceil(jpeg_steps / times)), 1, jpeg_steps);
    const auto eighths = [step](int side) { return (qint64{side} * step + jpeg_steps - 1) / jpeg_steps; };
    return eighths(size.width()) * eighths(size.height());
}

/// What is in memory at once while the picture is read at this size, made to fit and turned upright.
qint64 bytes_to_read(const PictureToRead& picture, const QSize& wanted) {
    const qint64 fits = pixels_of(wanted) * pixel_bytes;
    if (picture.jpeg) {
        return picture.held + pixels_read(picture.size, wanted) * pixel_bytes + fits;
    }
    // Any other picture is read whole, and where it isn't as pixels are made smaller, it is made so first.
    const bool unknown = picture.format == QImage::Format_Invalid;
    const qint64 depth = unknown ? pixel_bytes * 8 : QImage::toPixelFormat(picture.format).bitsPerPixel();
    const qint64 whole = pixels_of(picture.size) * depth / 8;
    const bool as_it_is = picture.format == QImage::Format_RGB32 || wanted == picture.size;
    return whole + (as_it_is ? 0 : std::max(whole, pixels_of(picture.size) * pixel_bytes)) + fits;
}

/// What a JPEG's frame header says.
struct Frame {
    bool progressive = false;
    int components = 0;
    qint64 samples = 0;
};

int byte_in(const QByteArray& bytes, qsizetype at) { return at < bytes.size() ? static_cast<quint8>(bytes.at(at)) : 0; }

int word_in(const QByteArray& bytes, qsizetype at) { return byte_in(bytes, at) << 8 | byte_in(bytes, at + 1); }

/// A frame's header (ITU-T T.81, B.2.2), its marker at `at`.
Frame frame_at(const QByteArray& jpeg, qsizetype at) {
    Frame frame;
    frame.progressive = byte_in(jpeg, at + 1) == 0xc2;
    frame.components = std::min(byte_in(jpeg, at + 9), 4);
    const qint64 pixels = qint64{word_in(jpeg, at + 5)} * word_in(jpeg, at + 7);
    int most_across = 1;
    int most_down = 1;
    std::array<int, 4> sampled{};
    for (int i = 0; i < frame.components; ++i) {
        const int factors = byte_in(jpeg, at + 11 + qsizetype{3} * i);
        most_across = std::max(most_across, factors >> 4);
        most_down = std::max(most_down, factors & 0xf);
        sampled[static_cast<std::size_t>(i)] = (factors >> 4) * (factors & 0xf);
    }
    for (const int each : sampled) {
        frame.samples += pixels * each / (most_across * most_down);
    }
    return frame;
}

}  // namespace

QSize kept_size(const QSize& size, qint64 most_pixels) {
    const double pixels = static_cast<double>(size.width()) * size.height();
    if (pixels <= static_cast<double>(most_pixels)) {
        return size;
    }
    const double share = std::sqrt(static_cast<double>(most_pixels) / pixels);
    return {std::max(1, static_cast<int>(size.width() * share)), std::max(1, static_cast<int>(size.height() * share))};
}

std::optional<QSize> size_to_read(const PictureToRead& picture, qint64 most_pixels) {
    if (picture.size.width() > side_read_limit || picture.size.height() > side_read_limit) {
        return std::nullopt;
    }
    QSize wanted = kept_size(picture.size, most_pixels);
    for (int step = picture.jpeg ? jpeg_steps : 1; bytes_to_read(picture, wanted) > picture_memory_limit; --step) {
        if (step == 1) {
            return std::nullopt;
        }
        // Not rounded up, or the next step would be read.
        const auto eighths = [step](int side) { return std::max(1, side * (step - 1) / jpeg_steps); };
        const QSize smaller(eighths(picture.size.width()), eighths(picture.size.height()));
        wanted = pixels_of(smaller) < pixels_of(wanted) ? smaller : wanted;
    }
    return wanted;
}

qint64 jpeg_held(const QByteArray& jpeg) {
    Frame frame;
    qsizetype at = 2;
    while (jpeg.startsWith("\xff\xd8") && at + 4 <= jpeg.size() && byte_in(jpeg, at) == 0xff) {
        const int marker = byte_in(jpeg, at + 1);
        const bool is_frame = marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
        if (marker == 0xff) {  // a fill byte before a marker
            ++at;
            continue;
        }
        if (is_frame) {
            frame = frame_at(jpeg, at);
        }
        if (marker == 0xda) {
            const bool in_several = frame.progressive || byte_in(jpeg, at + 4) < frame.components;
            return in_several ? 2 * frame.samples : 0;
        }
        at += 2 + word_in(jpeg, at + 2);
    }
    return 0;
}

}  // namespace truehang
