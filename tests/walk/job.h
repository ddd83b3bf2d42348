// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "leavings.h"
#include "person.h"
#include "program.h"
#include "workroom.h"

#include <QTemporaryDir>
#include <functional>
#include <optional>

namespace truehang::walk {

/// One visit from the empty notebook to the workroom's sheet, in steps. A step that fails throws; its name is printed.
class Job {
public:
    explicit Job(const QString& out);
    void run();

private:
    void step(const char* name, const std::function<void()>& what);

    void newVisit();
    void askPosition();
    void addCloths();
    void addWindow();
    void walkAcross();
    void walkUp();
    void settleWhatDiffers();
    void walkOn();
    void addRadiator();
    void hangCurtains();
    void measureWall();
    void readFigures();
    void lookAtLight();
    void takePhoto();
    void sign();
    void closeMidNumber();
    void finishNumber();
    void send();
    void lookAround();
    void readWhatArrived();
    void printSheet();

    /// Stands at `station`, presses the keys on the keypad and goes on.
    void measure(const char* station, const QString& keys, double mm);
    void standAt(const char* station);
    void pressKeys(const QString& keys);
    void changeUnit(const QString& now, const QString& wanted);

    Leavings leavings_;
    QTemporaryDir data_;
    QTemporaryDir card_;
    Program program_;
    Person person_;
    std::optional<Workroom> workroom_;
    std::vector<Typed> typed_;
    QByteArray received_;
};

}  // namespace truehang::walk
