// SPDX-License-Identifier: Apache-2.0
#include "transport/sender.h"

#include <QPointer>
#include <algorithm>

namespace truehang::sync {

Sender::Sender(Outbox& outbox, NetworkWire& wire, Outbox::Clock clock, BytesOf bytes_of, QObject* parent)
    : QObject(parent), outbox_(outbox), wire_(wire), clock_(std::move(clock)), bytes_of_(std::move(bytes_of)) {
    wake_.setSingleShot(true);
    connect(&wake_, &QTimer::timeout, this, &Sender::go);
}

void Sender::setWorkroom(const QUrl& address, const QByteArray& token) {
    address_ = address;
    token_ = token;
}

void Sender::go() {
    if (busy_ || !address_.isValid()) {
        return;
    }
    wake_.stop();
    const Step step = outbox_.next();
    if (!step.request) {
        held_ = {};
        if (step.wake_at) {
            const auto wait = std::clamp<std::chrono::milliseconds>(
                *step.wake_at - clock_(), std::chrono::milliseconds(1), std::chrono::hours(24));
            wake_.start(wait);
        }
        emit moved();
        return;
    }
    busy_ = true;
    emit moved();
    if (!step.request->body_of) {
        send(*step.request, QByteArray::fromStdString(step.request->content));
        return;
    }
    if (step.request->range && held_.sha256 == step.request->body_of->sha256) {
        send_stored(*step.request, held_.bytes);
        return;
    }
    bytes_of_(*step.request->body_of,
              [self = QPointer(this), request = *step.request](const std::optional<QByteArray>& bytes) {
                  if (!self) {
                      return;
                  }
                  if (bytes) {
                      self->send_stored(request, *bytes);
                  } else {
                      self->have_no_bytes(request);
                  }
              });
}

void Sender::have_no_bytes(const Request& request) {
    busy_ = false;
    held_ = {};
    outbox_.failed(request.ticket, WireFailure::no_bytes);
    emit moved();
    go();
}

void Sender::send_stored(const Request& request, const QByteArray& bytes) {
    if (!request.range) {
        held_ = {};
        send(request, bytes);
        return;
    }
    const auto from = static_cast<qsizetype>(request.range->from);
    const auto count = static_cast<qsizetype>(request.range->bytes);
    if (from < 0 || count < 0 || from > bytes.size() - count) {
        have_no_bytes(request);
        return;
    }
    held_ = {request.body_of->sha256, bytes};
    send(request, bytes.sliced(from, count));
}

void Sender::send(const Request& request, const QByteArray& body) {
    wire_.send(address_, token_, request, body,
               [self = QPointer(this), ticket = request.ticket](const Outcome& outcome) {
                   if (!self) {
                       return;
                   }
                   self->busy_ = false;
                   if (const auto* answer = std::get_if<Answer>(&outcome)) {
                       self->outbox_.answered(ticket, *answer);
                   } else if (const auto* failure = std::get_if<WireFailure>(&outcome)) {
                       self->outbox_.failed(ticket, *failure);
                   } else {
                       self->outbox_.called_off(ticket);
                       emit self->moved();
                       return;
                   }
                   emit self->moved();
                   self->go();
               });
}

void Sender::callOff() {
    wake_.stop();
    wire_.callOff();
}

}  // namespace truehang::sync
