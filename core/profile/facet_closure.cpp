// How firmly the folds seem to meet. Sound only hints at it.
#include "base/text.h"
#include "profile/against_own.h"
#include "profile/facets.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <cmath>

namespace luft::profile {
namespace {

// Borders in dB against the singer's own usual value at that level; no source, to be tuned on marked takes.
// Never against other singers: cepstral peaks of two programs differ by 15 dB on one signal (Skowronski et
// al. 2015), and the first two harmonics don't give the open quotient (Henrich et al. 2001).
constexpr double kLessPeak = -2.5, kMorePeak = 2.0;
constexpr double kMoreFirst = 2.5, kLessFirst = -2.5, kMuchLessFirst = -5.0;
constexpr int kLeastNotes = 6; ///< fewer have no 'usual' to be held against
constexpr double kNotable = 0.2;

const char* shade_of(double peak, double first) {
    if (peak <= kLessPeak && first >= kMoreFirst) return "breathy";
    if (first <= kMuchLessFirst && peak < kMorePeak) return "pressed";
    if (peak >= kMorePeak && first <= kLessFirst) return "firm";
    return "balanced";
}

std::string signed_db(double db) {
    return fixed(std::abs(db), 1) + " dB " + (db < 0 ? "under" : "over");
}

} // namespace

void closure(const Material& m, Draft& d) {
    const auto peak = levelled(m.notes, [](const SungNote& n) { return n.colour.cpp; });
    const auto first = levelled(m.notes, [](const SungNote& n) { return n.colour.h1h2; });
    int told = 0;
    Seconds time;
    for (std::size_t i = 0; i < m.notes.size(); ++i)
        if (peak[i] && first[i] && long_enough_for_pitch(m.notes[i])) ++told, time += m.notes[i].length();

    Values cpp, hnr, h1h2;
    for (const auto& n : m.notes) {
        cpp.add(n.colour.cpp, n);
        hnr.add(n.colour.hnr, n);
        h1h2.add(n.colour.h1h2, n);
    }
    add_measure(d.measures, "cpp_db", "Cepstral peak (CPP)", "dB", 1, cpp,
                "Higher is clearer. Louder singing raises it; figures of other programs can't be compared.");
    add_measure(d.measures, "hnr_db", "Harmonics to noise", "dB", 1, hnr,
                "Higher is clearer. Vibrato and accompaniment lower it.");
    add_measure(d.measures, "h1h2_db", "First to second harmonic (H1-H2)", "dB", 1, h1h2,
                "Higher often goes with a looser closure; vowel and register move it as well.");
    if (told < kLeastNotes) {
        if (told > 0) d.say("Too few notes to tell firm from loose closure by their sound.");
        return;
    }
    d.tally.open("closure", ShareBy::time, "note", "of singing", told, time,
                 {"balanced", "firm", "breathy", "pressed"});
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const auto& n = m.notes[i];
        if (!peak[i] || !first[i] || !long_enough_for_pitch(n)) continue;
        const std::string shade = shade_of(*peak[i], *first[i]);
        const double far = std::abs(*peak[i]) + std::abs(*first[i]);
        d.tally.add("closure", shade, n, shade == "balanced" ? n.length().value() - far / 5 : far,
                    Material::name(n) + " sounds " + shade + ": cepstral peak " + signed_db(*peak[i]) +
                        " and H1-H2 " + signed_db(*first[i]) + " what is usual here at that level");
    }
    d.say("Against the singer's own usual sound " +
          counted(d.tally.count("breathy"), "note suggests", "notes suggest") +
          " a looser, breathier closure, " + std::to_string(d.tally.count("firm")) + " a firmer and " +
          std::to_string(d.tally.count("pressed")) + " perhaps a pressed one.");
    d.good = "balanced";
    d.contrast = d.tally.count("breathy") >= d.tally.count("pressed") ? "breathy" : "pressed";

    for (const std::string shade : {"breathy", "pressed"}) {
        const int n = d.tally.count(shade);
        if (n < 3 || n < kNotable * told) continue;
        const auto third = d.tally.gathered_in(shade);
        d.find(
            FindingKind::watch, shade, 0.7 * n / told,
            "The sound of " + counted(n, "note") + " of " + std::to_string(told) + " suggests " +
                (shade == "breathy" ? "air beside the tone" : "a pressed tone") +
                (third ? ", mostly in the " + std::string(kThirdNames[*third]) + " range" : std::string()) +
                " (" + times(d.tally.spans(shade)) + "); it may be meant as a colour.",
            d.tally.best(shade), true);
    }
    if (const int n = d.tally.count("balanced"); n >= 0.8 * told)
        d.find(FindingKind::strength, "balanced", 0.6 * n / told,
               "Closure seems even: the sound of " + std::to_string(n) + " of " + counted(told, "note") +
                   " stays near the singer's usual clarity.",
               d.tally.best(d.good), true);
}

} // namespace luft::profile
