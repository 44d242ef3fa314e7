#include "export/profile_text.h"

#include "base/shown_text.h"
#include "base/text.h"
#include "export/page.h"
#include "export/plain_text.h"
#include "profile/words.h"

#include <sstream>

namespace luft::exports {
namespace {

using profile::Profile;

constexpr std::size_t kColumns = 78;

/// Columns a text takes: code points, near enough for what a profile says.
std::size_t columns(std::string_view text) {
    std::size_t n = 0;
    for (const char c : text)
        n += (static_cast<unsigned char>(c) & 0xC0) != 0x80 ? 1 : 0;
    return n;
}

/// Words folded at `kColumns`; `first` opens the first line, `rest` the others.
std::string folded(const std::string& text, const std::string& first = {}, const std::string& rest = {}) {
    std::istringstream words(one_line(text));
    std::string out, line = first, word;
    bool fresh = true;
    while (words >> word) {
        if (!fresh && columns(line) + 1 + columns(word) > kColumns) {
            out += with_directions_closed(line) + "\n";
            line = rest;
            fresh = true;
        }
        line += (fresh ? "" : " ") + word;
        fresh = false;
    }
    return out + with_directions_closed(line) + "\n";
}

std::string underlined(const std::string& text, char with) {
    const std::string clean = one_line(text);
    return clean + "\n" + std::string(columns(clean), with) + "\n";
}

std::string rests_on(vocabulary::Basis basis) {
    return basis == vocabulary::Basis::measured ? "measured"
           : basis == vocabulary::Basis::hint   ? "a hint only"
                                                : "the coach's judgement";
}

std::string list(const std::string& title, const std::vector<profile::Finding>& findings) {
    if (findings.empty()) return {};
    std::string out = "\n" + underlined(title, '-');
    for (const auto& f : findings)
        out += folded(f.words + (f.coach ? " [coach]" : f.hint ? " [hint]" : ""), "- ", "  ");
    return out;
}

template <class Array>
std::string numbers(const Array& values) {
    std::string out;
    for (const auto v : values)
        out += (out.empty() ? "" : " / ") + std::to_string(v);
    return out;
}

std::string facet_text(const profile::FacetProfile& facet, bool divided) {
    std::string out = "\n" + underlined(facet.name + " (" + rests_on(facet.basis) + ")", '-');
    if (!facet.summary.empty()) out += folded(facet.summary);
    for (const auto& hint : facet.hints)
        out += folded(hint.words + " [hint]");
    for (const auto& s : facet.shades) {
        std::string line =
            s.name + ": " + std::to_string(s.count) + ", " + profile::percent(s.share) + " " + s.of;
        if (divided) line += "; low / middle / high range " + numbers(s.by_range);
        line += "; quarters of the song " + numbers(s.by_quarter);
        if (s.by_coach > 0) line += "; by the coach " + std::to_string(s.by_coach);
        out += folded(line, "  ", "    ");
    }
    for (const auto& m : facet.measures)
        out += folded(m.name + ": " + profile::figure_text(m, m.median) +
                          (m.unit.empty() || m.unit == "MIDI" ? "" : " " + m.unit) + " (" +
                          profile::figure_text(m, m.low) + " to " + profile::figure_text(m, m.high) + "; " +
                          std::to_string(m.count) + (m.count == 1 ? " value)" : " values)"),
                      "  ", "    ");
    if (facet.best)
        out += folded(clock_text(facet.best->span.start) + "  " + facet.best->words, "  Hear: ", "    ");
    if (facet.counter)
        out += folded(clock_text(facet.counter->span.start) + "  " + facet.counter->words,
                      "  Against: ", "    ");
    return out;
}

} // namespace

std::string profile_text(const Profile& p) {
    std::string out = underlined("Technique profile: " + (p.piece.empty() ? "untitled" : p.piece), '=');
    std::string by = p.performer;
    if (!p.label.empty()) by += (by.empty() ? "" : " ") + ("(" + p.label + ")");
    if (!by.empty()) out += folded(by);
    if (!p.source.empty()) out += folded("Source: " + p.source);
    if (!p.permission.empty()) out += folded("Permission: " + p.permission);
    out += "\n";
    for (const auto& sentence : p.headline)
        out += folded(sentence);
    out += list("Strengths", p.strengths) + list("To watch", p.watch) + list("To practise", p.practise);
    for (const auto& facet : p.facets)
        out += facet_text(facet, p.range && p.range->divided);
    if (!p.drills.empty()) out += "\n" + underlined("Drills", '-');
    for (const auto& drill : p.drills) {
        out += folded(drill.title);
        int n = 0;
        for (const auto& step : drill.steps)
            out += folded(step, "  " + std::to_string(++n) + ". ", "     ");
        if (!drill.caution.empty()) out += folded("Take care: " + drill.caution, "  ", "  ");
    }
    out += "\n" + underlined("Please keep in mind", '-');
    for (const auto& caution : cautions())
        out += folded(caution, "- ", "  ");
    return out;
}

} // namespace luft::exports
