// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "program.h"

#include <QByteArray>
#include <QDir>
#include <QString>
#include <vector>

namespace truehang::walk {

/// One reading as the person typed it, and what it is in millimetres.
struct Typed {
    std::string station;
    QString keys;  ///< what was pressed, without the unit
    double mm = 0.0;
    bool replaced = false;  ///< measured again afterwards
};

/// The folder that a walk leaves: pictures in the order in which they were seen, and documents.
class Leavings {
public:
    explicit Leavings(const QString& folder);

    /// What the window shows, as `NN-name.png`.
    void picture(Program& program, const QString& name);
    /// The same at another size of the window, which then is as before.
    void pictureAt(Program& program, const QString& name, QSize size);
    void write(const QString& name, const QByteArray& bytes) const;
    [[nodiscard]] QString path(const QString& name) const { return folder_.filePath(name); }

private:
    QDir folder_;
    int pictures_ = 0;
};

/// Where the received document isn't what was typed, one line each; empty where it is.
[[nodiscard]] QStringList differences(const QByteArray& received, const std::vector<Typed>& typed,
                                      const std::string& not_taken);

}  // namespace truehang::walk
