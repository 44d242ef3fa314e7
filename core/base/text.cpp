#include "base/text.h"

#include <array>
#include <cctype>
#include <cmath>
#include <cstdio>

namespace luft {
namespace {

/// Length of the well-formed UTF-8 sequence at the start of `s`, or 0.
std::size_t sequence_length(std::string_view s) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
    const unsigned char c = byte(0);
    if (c < 0x80) return 1;
    const std::size_t n = c >= 0xC2 && c <= 0xDF   ? 2
                          : c >= 0xE0 && c <= 0xEF ? 3
                          : c >= 0xF0 && c <= 0xF4 ? 4
                                                   : 0;
    if (n == 0 || s.size() < n) return 0;
    for (std::size_t i = 1; i < n; ++i)
        if ((byte(i) & 0xC0) != 0x80) return 0;
    // Overlong forms, surrogates and code points above U+10FFFF.
    if ((c == 0xE0 && byte(1) < 0xA0) || (c == 0xED && byte(1) > 0x9F) || (c == 0xF0 && byte(1) < 0x90) ||
        (c == 0xF4 && byte(1) > 0x8F))
        return 0;
    return n;
}

} // namespace

std::string fixed(double value, int digits) {
    std::array<char, 64> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%.*f", digits, value);
    std::string text(buffer.data());
    if (text.starts_with('-') && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
    return text;
}

std::string clock_text(Seconds t) {
    const long long tenths = std::llround(std::abs(t.value()) * 10);
    const long long s = tenths / 10;
    std::array<char, 64> buffer{};
    if (s >= 3600)
        std::snprintf(buffer.data(), buffer.size(), "%lld:%02lld:%02lld.%lld", s / 3600, s / 60 % 60, s % 60,
                      tenths % 10);
    else
        std::snprintf(buffer.data(), buffer.size(), "%lld:%02lld.%lld", s / 60, s % 60, tenths % 10);
    return (t.value() < 0 && tenths > 0 ? "-" : "") + std::string(buffer.data());
}

std::string timestamp(Seconds t) {
    const long long ms = std::llround(std::max(t.value(), 0.0) * 1000);
    std::array<char, 64> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%02lld:%02lld:%02lld.%03lld", ms / 3600000, ms / 60000 % 60,
                  ms / 1000 % 60, ms % 1000);
    return buffer.data();
}

std::string note_name(MidiPitch pitch) {
    static constexpr std::array<const char*, 12> kNames = {"C",  "C#", "D",  "Eb", "E",  "F",
                                                           "F#", "G",  "Ab", "A",  "Bb", "B"};
    const auto semitone = std::lround(pitch.value());
    const long in_octave = ((semitone % 12) + 12) % 12;
    return kNames[static_cast<std::size_t>(in_octave)] + std::to_string((semitone - in_octave) / 12 - 1);
}

Cents off_semitone(MidiPitch pitch) {
    return Cents(100 * (pitch.value() - std::round(pitch.value())));
}

std::string escape_markup(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    for (const char c : text)
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        default:
            if (static_cast<unsigned char>(c) >= 0x20 || c == '\t' || c == '\n') out += c;
        }
    return out;
}

bool is_utf8(std::string_view text) {
    while (!text.empty()) {
        const std::size_t n = sequence_length(text);
        if (n == 0) return false;
        text.remove_prefix(n);
    }
    return true;
}

std::string valid_utf8(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const std::size_t n = sequence_length(text);
        if (n == 0) {
            out += "\xEF\xBF\xBD";
            text.remove_prefix(1);
        } else {
            out += text.substr(0, n);
            text.remove_prefix(n);
        }
    }
    return out;
}

int count_words(std::string_view text) {
    int words = 0;
    bool counted = false; // this run of non-spaces has been counted
    for (const char c : text) {
        const auto u = static_cast<unsigned char>(c);
        if (std::isspace(u))
            counted = false;
        else if (!counted && (std::isalnum(u) || u >= 0x80)) {
            // A dash or a quotation mark outside ASCII alone is rare enough in a script to count as a word.
            ++words;
            counted = true;
        }
    }
    return words;
}

std::string counted(std::size_t n, std::string_view noun, std::string_view plural) {
    const std::string many = plural.empty() ? std::string(noun) + "s" : std::string(plural);
    return std::to_string(n) + " " + (n == 1 ? std::string(noun) : many);
}

} // namespace luft
