// Vowel shape, as far as the first two formants hint at it.
#include "base/text.h"
#include "profile/against_own.h"
#include "profile/facets.h"
#include "profile/statistics.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace luft::profile {
namespace {

// Borders as log ratios against the singer's own median for the same vowel (about per cent; no source). The
// directions are those of tube acoustics: rounding the lips lowers all formants and spreading them raises
// all, a wider mouth opening raises F1 (Fant 1960, Acoustic Theory of Speech Production).
constexpr double kMoved = 0.05;
constexpr double kMovedFar = 0.10;
/// F1 or F2 at the end of a held note this far from its start: another vowel (no source).
constexpr double kMigrated = 0.18;
constexpr int kLeastNotes = 6;

const char* shade_of(double f1, double f2) {
    if (f1 >= kMoved && f2 >= kMoved) return "spread";
    if (f1 <= -kMoved && f2 <= -kMoved) return "rounded";
    if (f1 >= kMovedFar && f2 < kMoved) return "tall";
    if (f1 <= -kMovedFar && f2 > -kMoved) return "narrow";
    return nullptr;
}

/// Log ratio of end to start of a held note.
std::optional<double> migration(const Curve<Hertz>& curve, Span note) {
    const auto part = [&](double from, double to) {
        const auto v = curve.within({note.start + note.length() * from, note.start + note.length() * to});
        return median(std::vector<double>(v.begin(), v.end()));
    };
    const auto first = part(0.1, 0.35), last = part(0.65, 0.9);
    if (!first || !last || !(*first > 0) || !(*last > 0)) return std::nullopt;
    return std::log(*last / *first);
}

std::string moved(const char* formant, double log_ratio) {
    const double per_cent = std::abs(std::expm1(log_ratio)) * 100;
    if (per_cent < 1.5) return std::string(formant) + " about the same";
    return std::string(formant) + " " + fixed(per_cent, 0) + " % " + (log_ratio < 0 ? "lower" : "higher");
}

void say_vowels(const Material& m, Draft& d) {
    std::map<std::string, int> vowels;
    int with = 0;
    for (const auto& n : m.notes)
        if (n.note->vowel) {
            ++with;
            if (!n.note->vowel->nearest.empty()) ++vowels[n.note->vowel->nearest];
        }
    if (with == 0) return;
    std::vector<std::pair<std::string, int>> most(vowels.begin(), vowels.end());
    std::ranges::stable_sort(most, [](const auto& a, const auto& b) { return a.second > b.second; });
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < std::min<std::size_t>(5, most.size()); ++i)
        parts.push_back("[" + most[i].first + "] " + std::to_string(most[i].second));
    d.say("Formants could be read on " + counted(with, "note") + " of " + std::to_string(m.notes.size()) +
          (parts.empty() ? "." : "; nearest published vowels: " + listed(parts) + "."));
}

} // namespace

void vowel_shape(const Material& m, Draft& d) {
    const auto own1 = for_its_vowel(m.notes, [](const SungNote& n) -> std::optional<double> {
        return n.note->vowel ? std::optional(n.note->vowel->f1.value()) : std::nullopt;
    });
    const auto own2 = for_its_vowel(m.notes, [](const SungNote& n) -> std::optional<double> {
        return n.note->vowel ? std::optional(n.note->vowel->f2.value()) : std::nullopt;
    });
    Values f1, f2;
    int told = 0, held = 0;
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const auto& n = m.notes[i];
        if (n.note->vowel) f1.add(n.note->vowel->f1.value(), n), f2.add(n.note->vowel->f2.value(), n);
        told += own1[i] && own2[i] ? 1 : 0;
        held += n.length() >= kHeldNote && migration(m.source.curves.f1, n.span()) ? 1 : 0;
    }
    say_vowels(m, d);
    add_measure(d.measures, "f1_hz", "First formant", "Hz", 0, f1,
                "Opens with the jaw; on high notes it is withheld, as the partials lie too far apart.");
    add_measure(d.measures, "f2_hz", "Second formant", "Hz", 0, f2,
                "High for front vowels, low for back ones.");
    if (told >= kLeastNotes)
        d.tally.open("mouth", ShareBy::count, "note", "notes", told, Seconds(0),
                     {"tall", "spread", "rounded", "narrow"});
    d.tally.open("while held", ShareBy::count, "held note", "held notes", held, Seconds(0), {"migrating"});
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const auto& n = m.notes[i];
        const auto vowel = [&] { return "[" + n.note->vowel->nearest + "]"; };
        if (told >= kLeastNotes && own1[i] && own2[i])
            if (const char* shade = shade_of(*own1[i], *own2[i]))
                d.tally.add("mouth", shade, n, std::abs(*own1[i]) + std::abs(*own2[i]),
                            vowel() + " on " + Material::name(n) + " may be " + shade + ": " +
                                moved("F1", *own1[i]) + ", " + moved("F2", *own2[i]) +
                                ", against this singer's other " + vowel());
        if (n.length() < kHeldNote) continue;
        const auto one = migration(m.source.curves.f1, n.span());
        const auto two = migration(m.source.curves.f2, n.span());
        const double far = std::max(std::abs(one.value_or(0)), std::abs(two.value_or(0)));
        if (far >= kMigrated)
            d.tally.add("while held", "migrating", n, far,
                        "the vowel on " + Material::name(n) +
                            " seems to move: " + moved("F1", one.value_or(0)) + ", " +
                            moved("F2", two.value_or(0)) + " at the end of the note");
    }
    d.good = "tall";
    d.contrast = d.tally.count("migrating") > 0 ? "migrating" : "spread";
    if (const int n = d.tally.count("migrating"); n >= 3 && n >= 0.2 * held)
        d.find(FindingKind::watch, "migrating", 0.6 * n / held,
               "On " + counted(n, "held note") + " of " + std::to_string(held) +
                   " the vowel seems to turn into another (" + times(d.tally.spans("migrating")) +
                   "); it may be a diphthong of the word.",
               d.tally.best("migrating"), true);
    if (const int n = d.tally.count("spread"); told >= kLeastNotes && n >= 3 && n >= 0.2 * told) {
        const auto third = d.tally.gathered_in("spread");
        d.find(
            FindingKind::watch, "spread", 0.5 * n / told,
            "The sound of " + counted(n, "note") + " suggests a spread vowel" +
                (third ? ", mostly in the " + std::string(kThirdNames[*third]) + " range" : std::string()) +
                " (" + times(d.tally.spans("spread")) + ").",
            d.tally.best("spread"), true);
    }
}

} // namespace luft::profile
