// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/object_reader.h"
#include "document/object_writer.h"

// What a survey holds for light, and for a photo as a tape: read and written.

namespace truehang {

[[nodiscard]] Outlook read_outlook(ObjectReader& reader);
[[nodiscard]] Interior read_interior(ObjectReader& reader);
[[nodiscard]] PhotoPlane read_plane(ObjectReader& reader);

void write_outlook(JsonText& out, const Outlook& outlook);
void write_interior(JsonText& out, const Interior& interior);
void write_plane(JsonText& out, const PhotoPlane& plane);

}  // namespace truehang
