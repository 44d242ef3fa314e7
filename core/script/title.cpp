#include "script/title.h"

#include "base/shown_text.h"
#include "script/others.h"
#include "script/phrases.h"

#include <algorithm>
#include <cstdint>

namespace luft::script {
namespace {

/// Characters of a title taken from a text: fits a line of a chapter list.
constexpr std::size_t kTitleLength = 44;

bool starts_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
}

std::size_t characters(const std::string& text) {
    std::size_t n = 0;
    for (const char c : text)
        if (starts_character(c)) ++n;
    return n;
}

std::string at_speed(Rational speed) {
    if (speed == Rational(1)) return {};
    if (speed == Rational(1, 2)) return " at half speed";
    if (speed == Rational(1, 4)) return " at quarter speed";
    return " at " + std::to_string((speed * Rational(100)).round()) + " % speed";
}

} // namespace

std::string one_line(const std::string& text, std::size_t most) {
    std::string out;
    bool gap = false;
    std::string plain = text;
    std::ranges::replace_if(
        plain, [](unsigned char c) { return c < 0x20 || c == 0x7F; }, ' ');
    for (const char c : shown(plain)) {
        const auto u = static_cast<unsigned char>(c);
        if (u <= 0x20) {
            gap = !out.empty();
            continue;
        }
        if (gap) out += ' ';
        gap = false;
        out += c;
    }
    if (characters(out) <= most) return with_directions_closed(out);
    std::size_t end = 0; // bytes of the first most-1 characters
    for (std::size_t n = 0; end < out.size(); ++end)
        if (starts_character(out[end]) && ++n > most - 1) break;
    const std::size_t space = out.rfind(' ', end);
    out.resize(space != std::string::npos && space > end / 2 ? space : end);
    return with_directions_closed(out) + "…";
}

std::string title_of(const Source& source, const project::ScriptItem& item, int stop_number) {
    switch (item.kind) {
    case project::ScriptItemKind::opening:
        return "Opening";
    case project::ScriptItemKind::closing:
        return "Closing";
    case project::ScriptItemKind::aside:
        return "Aside";
    case project::ScriptItemKind::stop:
        break;
    }
    const std::string stop = "Stop " + std::to_string(stop_number);
    for (const auto& moment : source.moments)
        if (item.moment == moment.id && !moment.shades.empty())
            return stop + ": " + one_line(noun(source.vocabulary, moment.shades.front()).name, kTitleLength);
    const std::string words = one_line(item.text, kTitleLength);
    return words.empty() ? stop : stop + ": " + words;
}

std::string replay_title(Rational speed) {
    return "Again" + at_speed(speed);
}

std::string quote_title(const project::Performance& other, Rational speed) {
    return "Compare" + at_speed(speed) + ": " + performance_name(other);
}

} // namespace luft::script
