#include "cli/typed.h"

#include "base/bytes.h"
#include "base/error.h"
#include "base/text.h"

#include <optional>
#include <span>
#include <string_view>

namespace luft::cli {
namespace {

/// Text files are short: words of a song, a remark. More than this is not one.
constexpr std::int64_t kMostTextBytes = 4 << 20;

/// One or two digits fewer than what double holds exactly; a time has no more.
constexpr std::size_t kMostDigits = 12;

/// Reads digits, with a fraction where allowed; none when it isn't a number.
std::optional<double> number(std::string_view text, bool fraction) {
    double value = 0;
    double place = 0; // 0 before the point
    std::size_t digits = 0;
    for (const char c : text) {
        if (c == '.' && fraction && place == 0) {
            place = 1;
        } else if (c >= '0' && c <= '9' && ++digits <= kMostDigits) {
            value = value * 10 + (c - '0');
            place *= 10;
        } else {
            return std::nullopt;
        }
    }
    if (digits == 0) return std::nullopt;
    return place == 0 ? value : value / place;
}

} // namespace

Seconds parse_time(const std::string& text) {
    const auto wrong = [&] {
        return UsageError("'" + text +
                          "' is not a time; write seconds or minutes:seconds, as 62.5 "
                          "or 1:02.5");
    };
    double seconds = 0;
    std::size_t from = 0;
    for (int part = 0; part < 3; ++part) {
        const std::size_t colon = text.find(':', from);
        const bool last = colon == std::string::npos;
        const auto value = number(std::string_view(text).substr(from, last ? colon : colon - from), last);
        if (!value || (part > 0 && *value >= 60)) throw wrong();
        seconds = seconds * 60 + *value;
        if (last) return Seconds(seconds);
        from = colon + 1;
    }
    throw wrong();
}

std::string read_text_file(const std::string& file) {
    const auto bytes = open_file(file);
    if (bytes->size() > kMostTextBytes)
        throw Error(Fault::unreadable, "'" + file + "' is too large for a text.");
    std::string text(static_cast<std::size_t>(bytes->size()), '\0');
    std::size_t got = 0;
    while (got < text.size()) {
        const std::size_t n = bytes->read_at(static_cast<std::int64_t>(got),
                                             std::as_writable_bytes(std::span(text).subspan(got)));
        if (n == 0) break;
        got += n;
    }
    text.resize(got);
    if (!is_utf8(text))
        throw Error(Fault::unreadable, "'" + file + "' is not UTF-8 text.",
                    "Save it as UTF-8 and try again.");
    text.erase(text.find_last_not_of("\r\n") + 1);
    return text;
}

} // namespace luft::cli
