#include "base/typed_time.h"

namespace luft {
namespace {

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

std::optional<Seconds> typed_time(std::string_view text) {
    double seconds = 0;
    for (int part = 0; part < 3; ++part) {
        const std::size_t colon = text.find(':');
        const bool last = colon == std::string_view::npos;
        const auto value = number(text.substr(0, colon), last);
        if (!value || (part > 0 && *value >= 60)) return std::nullopt;
        seconds = seconds * 60 + *value;
        if (last) return Seconds(seconds);
        text.remove_prefix(colon + 1);
    }
    return std::nullopt;
}

std::optional<Span> typed_span(std::string_view text) {
    const std::size_t line = text.find('-');
    if (line == std::string_view::npos) return std::nullopt;
    const auto start = typed_time(text.substr(0, line)), end = typed_time(text.substr(line + 1));
    return start && end ? std::optional(Span{*start, *end}) : std::nullopt;
}

} // namespace luft
