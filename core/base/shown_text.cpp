#include "base/shown_text.h"

#include "base/text.h"

#include <array>
#include <cstdint>
#include <cstdio>
#include <vector>

namespace luft {
namespace {

/// A character of well-formed UTF-8 and its bytes.
struct Character {
    std::uint32_t code = 0;
    std::string_view bytes;
};

Character first_of(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const std::size_t count = byte(0) < 0x80 ? 1 : byte(0) < 0xE0 ? 2 : byte(0) < 0xF0 ? 3 : 4;
    constexpr std::array<unsigned, 5> kMask{0, 0x7F, 0x1F, 0x0F, 0x07};
    std::uint32_t code = byte(0) & kMask[count];
    for (std::size_t i = 1; i < count; ++i)
        code = code << 6 | (byte(i) & 0x3FU);
    return {code, text.substr(0, count)};
}

template <class Take>
void for_each_character(std::string_view text, Take take) {
    while (!text.empty()) {
        const Character c = first_of(text);
        text.remove_prefix(c.bytes.size());
        take(c);
    }
}

constexpr std::string_view kPopDirection = "\xE2\x80\xAC", kPopIsolate = "\xE2\x81\xA9";

bool is_control(std::uint32_t code) {
    return (code < 0x20 && code != '\t' && code != '\n' && code != '\r') || (code >= 0x7F && code < 0xA0);
}

bool is_line_end(std::uint32_t code) {
    return code == 0x85 || code == 0x2028 || code == 0x2029;
}

bool is_no_character(std::uint32_t code) {
    return (code & 0xFFFE) == 0xFFFE || (code >= 0xFDD0 && code <= 0xFDEF);
}

} // namespace

std::string without_orders(std::string_view text) {
    const std::string valid = valid_utf8(text);
    std::string out;
    for_each_character(valid, [&](const Character& c) {
        if (!is_control(c.code)) out += c.bytes;
    });
    return out;
}

std::string shown(std::string_view text) {
    std::string out, line;
    const auto end_line = [&] {
        out += with_directions_closed(line);
        line.clear();
    };
    const std::string valid = valid_utf8(text);
    for_each_character(valid, [&](const Character& c) {
        if (is_line_end(c.code) || c.code == '\n' || c.code == '\r') {
            end_line();
            out += c.code == '\r' ? '\r' : '\n';
        } else if (is_no_character(c.code)) {
            line += "\xEF\xBF\xBD";
        } else if (!is_control(c.code)) {
            line += c.bytes;
        }
    });
    end_line();
    return out;
}

std::string with_directions_closed(std::string_view line) {
    // Almost every line has none of these signs, all of which begin so.
    if (line.find("\xE2\x80") == std::string_view::npos && line.find("\xE2\x81") == std::string_view::npos)
        return std::string(line);
    std::string out;
    std::vector<bool> open; // true = an isolate
    const auto pop = [&] {
        out += open.back() ? kPopIsolate : kPopDirection;
        open.pop_back();
    };
    const std::string valid = valid_utf8(line);
    for_each_character(valid, [&](const Character& c) {
        const bool isolate = c.code >= 0x2066 && c.code <= 0x2068;
        if (isolate || c.code == 0x202A || c.code == 0x202B || c.code == 0x202D || c.code == 0x202E) {
            open.push_back(isolate);
            out += c.bytes;
        } else if (c.code == 0x202C) {
            if (!open.empty() && !open.back()) pop();
        } else if (c.code == 0x2069) {
            bool any = false;
            for (const bool one : open)
                any = any || one;
            while (any && !open.empty()) { // what was opened inside ends with it
                any = !open.back();
                pop();
            }
        } else {
            out += c.bytes;
        }
    });
    while (!open.empty())
        pop();
    return out;
}

std::string without_directions(std::string_view text) {
    const std::string valid = valid_utf8(text);
    std::string out;
    for_each_character(valid, [&](const Character& c) {
        const bool turns = c.code == 0x200E || c.code == 0x200F || (c.code >= 0x202A && c.code <= 0x202E) ||
                           (c.code >= 0x2066 && c.code <= 0x2069) || c.code == 0x061C;
        if (!turns) out += c.bytes;
    });
    return out;
}

std::string shown_json(std::string json) {
    if (json.find_first_of("\x7F\xC2\xE2") == std::string::npos) return json;
    std::string out;
    for_each_character(json, [&](const Character& c) {
        if (!(c.code >= 0x7F && c.code < 0xA0) && c.code != 0x2028 && c.code != 0x2029) {
            out += c.bytes;
            return;
        }
        std::array<char, 8> escape{};
        std::snprintf(escape.data(), escape.size(), "\\u%04x", static_cast<unsigned>(c.code));
        out += escape.data();
    });
    return out;
}

} // namespace luft
