// How firmly the folds seem to meet. Sound only hints at it.
#include "profile/closure_hint.h"
#include "profile/facets.h"
#include "profile/words.h"

namespace luft::profile {
namespace {

constexpr double kNotable = 0.2; ///< share from which on a shade is worth a word (no source)

} // namespace

void closure(const Material& m, Draft& d) {
    const auto hints = closure_hints(m);
    int told = 0;
    Seconds time;
    for (std::size_t i = 0; i < m.notes.size(); ++i)
        if (hints[i]) ++told, time += m.notes[i].length();

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
    if (told == 0) {
        if (!cpp.empty()) d.say("Too few notes to tell firm from loose closure by their sound.");
        return;
    }
    d.tally.open("closure", ShareBy::time, "note", "of singing", told, time,
                 {"balanced", "firm", "breathy", "pressed"});
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const auto& n = m.notes[i];
        if (!hints[i]) continue;
        const auto& hint = *hints[i];
        d.tally.add("closure", hint.shade, n,
                    hint.shade == "balanced" ? n.length().value() - hint.far() / 5 : hint.far(),
                    Material::name(n) + " sounds " + hint.shade + ": " + hint.words());
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
