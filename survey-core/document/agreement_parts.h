// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/object_reader.h"
#include "document/object_writer.h"

// What a client signed, and what for, as a survey document holds it.

namespace truehang {

[[nodiscard]] SignedOff read_signed_off(ObjectReader& reader);
void write_signed_off(JsonText& out, const SignedOff& signed_off);

}  // namespace truehang
