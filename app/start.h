// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QString>
#include <functional>
#include <future>
#include <string>

// What every program that shows the screens needs at its start.

namespace truehang {

/// Where the module `Truehang.Face` lies in the resources, with a slash at its end; before it `qrc` for a URL.
inline constexpr auto face_folder = ":/qt-project.org/imports/Truehang/Face/";

/// Makes module `Truehang` known to QML and, the first time, begins to load the shipped faces, aside where the system
/// has threads: what is given is to be waited for before anything is shown. Needs a QGuiApplication.
[[nodiscard]] std::shared_future<void> make_face_known();

/// The system's time as RFC 3339 with its offset, to the second. May be called on any thread.
[[nodiscard]] std::string system_time();

/// Makes ids (RFC 9562, version 7) on any thread.
[[nodiscard]] std::function<std::string()> system_ids();

}  // namespace truehang
