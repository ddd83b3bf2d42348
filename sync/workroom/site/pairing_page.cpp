// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/pairing_page.h"

#include "protocol/pairing_text.h"
#include "sheet/words.h"
#include "workroom/site/frame.h"

#include <fmt/format.h>
#include <qrcodegen/QrCode.hpp>

namespace truehang::workroom {

namespace {

/// What must stay light round the code, in modules (ISO/IEC 18004, 6.3.8).
constexpr int quiet_zone = 4;

/// "ba78 16bf …": read aloud and compared.
std::string in_groups(const std::string& digits) {
    std::string grouped;
    for (std::size_t at = 0; at < digits.size(); at += 4) {
        grouped.append(at == 0 ? "" : " ").append(digits, at, 4);
    }
    return grouped;
}

}  // namespace

std::string picture_code(std::string_view text, std::string_view said) {
    using qrcodegen::QrCode;
    const auto code = QrCode::encodeText(std::string(text).c_str(), QrCode::Ecc::MEDIUM);
    const int size = code.getSize();
    std::string path;
    for (int y = 0; y < size; ++y) {
        for (int x = 0; x < size; ++x) {
            int end = x;
            while (end < size && code.getModule(end, y)) {
                ++end;
            }
            if (end > x) {
                path += fmt::format("M{},{}h{}v1h-{}z", x + quiet_zone, y + quiet_zone, end - x, end - x);
                x = end;
            }
        }
    }
    const int side = size + 2 * quiet_zone;
    return fmt::format(
        R"(<svg class="picture-code" viewBox="0 0 {0} {0}" role="img" aria-label="{1}" shape-rendering="crispEdges">)"
        R"(<rect width="{0}" height="{0}" fill="white"/><path d="{2}" fill="black"/></svg>)",
        side, said, path);
}

std::string pairing_page(const Reach& reach, const std::string& code, sync::Time until) {
    auto values = view();
    values.set("code", code);
    values.set("until", moment_text(sync::write_time(until)));
    auto addresses = view_list();
    for (const auto& address : reach.addresses) {
        addresses << View{address};
    }
    values.set("addresses", addresses);
    values.set("here_only", truth(reach.from_this_machine_only));
    values.set("pin", reach.pin.empty() ? truth(false) : View{in_groups(reach.pin)});
    const auto text = reach.addresses.empty()
                          ? std::string()
                          : sync::write_pairing_text({reach.addresses.front(), code, until, reach.pin});
    values.set("text", text.empty() ? truth(false) : View{text});
    values.set("picture", text.empty() ? std::string() : picture_code(text, "The text below as a picture code"));
    return framed({"Pair a phone", "page-pairing", {{"/", "Surveys"}, {"/devices", "Devices"}}, false},
                  fill("pairing", values));
}

}  // namespace truehang::workroom
