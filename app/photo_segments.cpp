// SPDX-License-Identifier: Apache-2.0
#include "photo_segments.h"

#include <optional>
#include <vector>

namespace truehang {

namespace {

constexpr int app0 = 0xe0;
constexpr int app1 = 0xe1;
constexpr int app13 = 0xed;
constexpr int start_of_scan = 0xda;
constexpr quint16 orientation_tag = 0x0112;
constexpr qsizetype entry_size = 12;
constexpr qsizetype longest_packet = 1024 * 1024;

int byte_at(const QByteArray& bytes, qsizetype at) { return static_cast<quint8>(bytes.at(at)); }

/// One segment from its marker to its end.
struct Segment {
    int marker = 0;
    qsizetype from = 0;
    qsizetype length = 0;
};

std::vector<Segment> segments_of(const QByteArray& jpeg) {
    std::vector<Segment> segments;
    if (!jpeg.startsWith("\xff\xd8")) {
        return segments;
    }
    qsizetype at = 2;
    while (at + 4 <= jpeg.size() && byte_at(jpeg, at) == 0xff) {
        const int marker = byte_at(jpeg, at + 1);
        const qsizetype length = 2 + (byte_at(jpeg, at + 2) << 8 | byte_at(jpeg, at + 3));
        if (marker == start_of_scan || length < 4 || at + length > jpeg.size()) {
            break;
        }
        segments.push_back({marker, at, length});
        at += length;
    }
    return segments;
}

/// Reads and writes a TIFF's numbers in its own byte order.
class Tiff {
public:
    Tiff(QByteArray& bytes, qsizetype from) : bytes_(bytes), from_(from), little_(bytes.mid(from, 2) == "II") {}

    [[nodiscard]] std::optional<quint32> number(qsizetype at, int width) const {
        if (at < 0 || from_ + at + width > bytes_.size()) {
            return std::nullopt;
        }
        quint32 value = 0;
        for (int i = 0; i < width; ++i) {
            const int byte = byte_at(bytes_, from_ + at + (little_ ? width - 1 - i : i));
            value = value << 8 | static_cast<quint32>(byte);
        }
        return value;
    }
    /// A short with the value 1.
    void set_one(qsizetype at) {
        bytes_[from_ + at] = static_cast<char>(little_ ? 1 : 0);
        bytes_[from_ + at + 1] = static_cast<char>(little_ ? 0 : 1);
    }

private:
    QByteArray& bytes_;
    qsizetype from_;
    bool little_;
};

void set_exif_upright(QByteArray& segment) {
    constexpr qsizetype tiff_at = 10;  // marker, length, "Exif\0\0"
    Tiff tiff(segment, tiff_at);
    const auto directory = tiff.number(4, 4);
    const auto count = directory ? tiff.number(*directory, 2) : std::nullopt;
    for (quint32 i = 0; count && i < *count; ++i) {
        const qsizetype entry = static_cast<qsizetype>(*directory) + 2 + i * entry_size;
        const auto tag = tiff.number(entry, 2);
        if (!tag || !tiff.number(entry + 8, 2)) {
            return;
        }
        if (*tag == orientation_tag) {
            tiff.set_one(entry + 8);
        }
    }
}

void set_xmp_upright(QByteArray& segment) {
    const QByteArray name = "tiff:Orientation";
    for (qsizetype at = segment.indexOf(name); at >= 0; at = segment.indexOf(name, at + name.size())) {
        qsizetype digit = at + name.size();
        while (digit < segment.size() && QByteArray("=\"'> ").contains(segment.at(digit))) {
            ++digit;
        }
        if (digit < segment.size() && segment.at(digit) >= '1' && segment.at(digit) <= '8') {
            segment[digit] = '1';
        }
    }
}

}  // namespace

QByteArray said_beside_pixels(const QByteArray& jpeg) {
    QByteArray said;
    for (const Segment& segment : segments_of(jpeg)) {
        if ((segment.marker != app1 && segment.marker != app13) || said.size() > longest_packet) {
            continue;
        }
        QByteArray bytes = jpeg.mid(segment.from, segment.length);
        if (bytes.mid(4, 6) == QByteArray("Exif\0\0", 6)) {
            set_exif_upright(bytes);
        } else if (segment.marker == app1) {
            set_xmp_upright(bytes);
        }
        said += bytes;
    }
    return said;
}

QByteArray with_segments(const QByteArray& jpeg, const QByteArray& segments) {
    qsizetype at = 2;
    for (const Segment& segment : segments_of(jpeg)) {
        if (segment.marker == app0) {
            at = segment.from + segment.length;
        }
    }
    return segments.isEmpty() ? jpeg : jpeg.left(at) + segments + jpeg.mid(at);
}

}  // namespace truehang
