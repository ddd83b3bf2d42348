// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "fake_workroom.h"

#include "outbox/item.h"
#include "protocol/digest.h"
#include "protocol/problem.h"
#include "protocol/records.h"

#include <QImage>
#include <algorithm>
#include <cstdint>
#include <functional>

// Workrooms that take what a phone sends, as sync/protocol/README.md says.

namespace truehang::test {

inline QByteArray survey_receipt(const sync::Item& item) {
    return QByteArray::fromStdString(
        write_record(sync::SurveyReceipt{item.survey, item.revision, item.sha256, "2026-03-14T12:00:00Z"}));
}

/// One that pairs with anyone and takes everything from who is paired.
inline void take_everything(QTcpSocket& socket, const Heard& heard) {
    if (heard.path == "/pair") {
        FakeWorkroom::answer(
            socket, 201,
            QByteArray::fromStdString(write_record(sync::PairAnswer{"secret-token", "Workroom at Ferrymouth"})));
        return;
    }
    if (!heard.head.contains("Authorization: Bearer secret-token")) {
        FakeWorkroom::answer(
            socket, 401,
            QByteArray::fromStdString(sync::write_problem({sync::ProblemKind::unauthorised, "Pair first.", {}})));
        return;
    }
    sync::Item item;
    item.sha256 = sync::hex(sync::sha256(heard.body.toStdString()));
    const QList<QByteArray> parts = heard.path.split('/');
    if (parts.value(1) == "photos") {
        FakeWorkroom::answer(socket, 201,
                             QByteArray::fromStdString(write_record(
                                 sync::PhotoReceipt{item.sha256, heard.body.size(), "2026-03-14T12:00:00Z"})));
        return;
    }
    item.survey = parts.value(2).toStdString();
    item.revision = parts.value(4).toLongLong();
    FakeWorkroom::answer(socket, 201, survey_receipt(item));
}

inline QByteArray field_of(const Heard& heard, const QByteArray& name) {
    for (const QByteArray& line : heard.head.split('\n')) {
        if (line.startsWith(name + ": ")) {
            return line.mid(name.size() + 2).trimmed();
        }
    }
    return {};
}

/// One that takes large photos in pieces.
class TakesPieces {
public:
    QByteArray came;
    int pieces = 0;
    std::function<bool()> cut = [] { return false; };   ///< of the piece that came half is kept, and nothing answered
    std::function<bool()> hold = [] { return false; };  ///< it isn't answered, nor kept

    void operator()(QTcpSocket& socket, const Heard& heard) {
        if (heard.method == "POST" && heard.path.startsWith("/photos/")) {
            length_ = field_of(heard, "Upload-Length").toLongLong();
            stands(socket, 201);
        } else if (heard.method == "HEAD" && heard.path.startsWith("/uploads/")) {
            stands(socket, 204);
        } else if (heard.method == "PATCH") {
            take(socket, heard);
        } else {
            take_everything(socket, heard);
        }
    }

private:
    void stands(QTcpSocket& socket, int status) const {
        FakeWorkroom::answer(socket, status, {},
                             "Upload-Complete: ?0\r\nUpload-Offset: " + QByteArray::number(came.size()) + "\r\n");
    }
    void take(QTcpSocket& socket, const Heard& heard) {
        if (hold()) {
            return;
        }
        const auto offset = field_of(heard, "Upload-Offset").toLongLong();
        if (offset != came.size() || field_of(heard, "Content-Type") != "application/partial-upload") {
            const sync::Problem problem{sync::ProblemKind::mismatching_offset, "Elsewhere.", {}, came.size(), offset};
            FakeWorkroom::answer(socket, 409, QByteArray::fromStdString(sync::write_problem(problem)));
            return;
        }
        ++pieces;
        if (cut()) {
            came += heard.body.first(heard.body.size() / 2);
            socket.abort();
            return;
        }
        came += heard.body;
        if (came.size() < length_) {
            return stands(socket, 204);
        }
        const sync::PhotoReceipt receipt{sync::hex(sync::sha256(came.toStdString())), came.size(),
                                         "2026-03-14T12:00:00Z"};
        FakeWorkroom::answer(socket, 201, QByteArray::fromStdString(write_record(receipt)), "Upload-Complete: ?1\r\n");
    }

    qint64 length_ = 0;
};

/// A picture that no way of writing pictures makes small.
inline QImage incompressible() {
    QImage picture(1600, 1200, QImage::Format_RGB32);
    std::uint32_t state = 1;
    for (int y = 0; y < picture.height(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(picture.scanLine(y));
        std::generate(line, line + picture.width(), [&state] {
            state = state * 1664525U + 1013904223U;
            return 0xff000000U | (state >> 8U);
        });
    }
    return picture;
}

}  // namespace truehang::test
