#include "project/sung_lines.h"

#include <algorithm>
#include <cctype>

namespace luft::project {
namespace {

constexpr std::u32string_view kVowels =
    U"aeiouyàáâãäåæèéêëìíîïòóôõöøùúûüýÿāăąēėęěīįőœūůűαεηιουωάέήίόύώаеёиоуыэюяіїє";

/// The letters of well-formed UTF-8, capitals of ASCII, Latin-1, Greek and Cyrillic made small.
std::u32string letters_of(std::string_view text) {
    std::u32string out;
    for (std::size_t i = 0; i < text.size();) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const std::size_t length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        char32_t c = length == 1 ? lead : lead & (0xFFU >> (length + 1));
        for (std::size_t k = 1; k < length && i + k < text.size(); ++k)
            c = c << 6 | (static_cast<unsigned char>(text[i + k]) & 0x3FU);
        i += length;
        const bool capital = (c >= U'A' && c <= U'Z') || (c >= 0xC0 && c <= 0xDE && c != 0xD7) ||
                             (c >= 0x391 && c <= 0x3A9) || (c >= 0x410 && c <= 0x42F);
        out.push_back(capital ? c + 0x20 : c >= 0x400 && c <= 0x40F ? c + 0x50 : c);
    }
    return out;
}

bool is_vowel(char32_t c) {
    return kVowels.find(c) != std::u32string_view::npos;
}

bool is_letter(char32_t c) {
    return c > 0xBF ? c < 0x2000 || c > 0x206F : c < 0x80 && std::isalnum(static_cast<int>(c)) != 0;
}

void ask_for_notes(Syllable& whole, bool mute_e) {
    std::u32string letters = letters_of(whole.text);
    std::erase_if(letters, [](char32_t c) { return !is_letter(c); });
    const std::size_t size = letters.size();
    const auto vowel = [&](std::size_t i) { return i < size && is_vowel(letters[i]); };
    int runs = 0;
    for (std::size_t i = 0; i < size; ++i) {
        runs += vowel(i) && (i == 0 || !vowel(i - 1));
        runs += i > 0 && letters[i] == U'y' && !vowel(i - 1) && vowel(i + 1); // "ly-ing"
    }
    // "home", "ropes", "turned": written, and not sung.
    const std::size_t e =
        size > 1 && (letters[size - 1] == U's' || letters[size - 1] == U'd') ? size - 2 : size - 1;
    const bool mute = mute_e && runs > 1 && letters[e] == U'e' && !vowel(e - 1);
    whole.notes = std::max(1, runs - (mute ? 1 : 0));
}

bool sung(std::string_view text) {
    return std::ranges::any_of(letters_of(text), is_letter);
}

/// The parts of one word as it stands between spaces.
SungLine parts_of(std::string_view word) {
    SungLine parts;
    while (!word.empty()) {
        const std::size_t hyphen = std::min(word.find('-'), word.size());
        const std::string_view text = word.substr(0, hyphen);
        const bool ends = hyphen == word.size();
        if (sung(text))
            parts.push_back({std::string(text), !ends});
        else if (!text.empty() && !parts.empty())
            parts.back().text += text;
        word.remove_prefix(ends ? hyphen : hyphen + 1);
    }
    return parts;
}

SungLine line_of(std::string_view text, bool mute_e) {
    constexpr std::string_view kSpaces = " \t\r\f\v";
    SungLine line;
    for (std::size_t at = text.find_first_not_of(kSpaces); at != std::string_view::npos;) {
        const std::size_t end = std::min(text.find_first_of(kSpaces, at), text.size());
        for (Syllable& part : parts_of(text.substr(at, end - at)))
            line.push_back(std::move(part));
        at = text.find_first_not_of(kSpaces, end);
    }
    if (line.empty()) return line;
    line.back().joins = false;
    line.back().ends_line = true;
    for (std::size_t i = 0; i < line.size(); ++i)
        if (!line[i].joins && (i == 0 || !line[i - 1].joins)) ask_for_notes(line[i], mute_e);
    return line;
}

bool looks_english(std::string_view text) {
    std::u32string word;
    std::u32string letters = letters_of(text);
    letters.push_back(U' ');
    for (const char32_t c : letters) {
        if (is_letter(c)) {
            word.push_back(c);
            continue;
        }
        for (const std::u32string_view known : {U"the", U"and", U"you", U"my"})
            if (word == known) return true;
        word.clear();
    }
    return false;
}

} // namespace

std::vector<SungLine> sung_lines(std::string_view words) {
    const bool mute_e = looks_english(words);
    std::vector<SungLine> lines;
    while (!words.empty()) {
        const std::size_t end = std::min(words.find('\n'), words.size());
        if (SungLine line = line_of(words.substr(0, end), mute_e); !line.empty())
            lines.push_back(std::move(line));
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return lines;
}

} // namespace luft::project
