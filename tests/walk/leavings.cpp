// SPDX-License-Identifier: Apache-2.0
#include "leavings.h"

#include "document/document.h"

#include <QFile>
#include <QImage>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace truehang::walk {

Leavings::Leavings(const QString& folder) : folder_(folder) {
    if (!folder_.mkpath(QStringLiteral("."))) {
        throw std::runtime_error("can't make " + folder.toStdString());
    }
    folder_.setPath(folder_.absolutePath());
}

void Leavings::picture(Program& program, const QString& name) {
    program.settle();
    const QString file = QStringLiteral("%1-%2.png").arg(++pictures_, 2, 10, QLatin1Char('0')).arg(name);
    if (!program.window().grabWindow().save(path(file))) {
        throw std::runtime_error("can't write " + file.toStdString());
    }
}

void Leavings::pictureAt(Program& program, const QString& name, QSize size) {
    const QSize before = program.window().size();
    for (const QSize now : {size, before}) {
        program.window().resize(now);
        if (!QTest::qWaitFor([&] { return program.window().size() == now; }, 10'000)) {
            throw std::runtime_error("the window takes no other size");
        }
        program.settle();
        if (now == size) {
            picture(program, name);
        }
    }
}

void Leavings::write(const QString& name, const QByteArray& bytes) const {
    QFile file(path(name));
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size()) {
        throw std::runtime_error("can't write " + name.toStdString());
    }
}

QStringList differences(const QByteArray& received, const std::vector<Typed>& typed, const std::string& not_taken) {
    const auto survey = read_survey(received.toStdString());
    if (!survey || survey->rooms.size() != 1 || survey->rooms.front().windows.size() != 1) {
        return {QStringLiteral("not a survey of one window")};
    }
    const Window& window = survey->rooms.front().windows.front();
    QStringList differ;
    for (const Typed& one : typed) {
        const auto there = std::ranges::find_if(window.readings, [&](const Reading& reading) {
            const bool replaced = std::ranges::any_of(
                window.readings, [&](const Reading& other) { return other.replaces == reading.id; });
            return reading.station == one.station && replaced == one.replaced && reading.value &&
                   std::abs(reading.value->mm() - one.mm) < 1e-6 &&
                   QString::fromStdString(reading.typed).startsWith(one.keys);
        });
        if (there == window.readings.end()) {
            differ << QStringLiteral("%1 %2 (%3 mm) isn't there as typed")
                          .arg(QString::fromStdString(one.station), one.keys)
                          .arg(one.mm);
        }
    }
    if (window.readings.size() != typed.size()) {
        differ << QStringLiteral("%1 readings typed, %2 received").arg(typed.size()).arg(window.readings.size());
    }
    if (!std::ranges::any_of(window.not_taken, [&](const NotTaken& n) { return n.station == not_taken; })) {
        differ << QStringLiteral("%1 isn't said to be out of reach").arg(QString::fromStdString(not_taken));
    }
    return differ;
}

}  // namespace truehang::walk
