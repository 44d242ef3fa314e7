// Larynx height, as far as the spacing of the formants hints at the length of the vocal tract.
#include "base/text.h"
#include "profile/against_own.h"
#include "profile/facets.h"
#include "profile/statistics.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

/// Log ratio against the singer's own median for the same vowel from which on a note is called high or low
/// (about 4 %, some 7 mm of a tract of 17.5 cm; no source). Lips move the formants as well.
constexpr double kShifted = 0.04;
/// Rise of the spacing over a phrase that climbs, from which on it is called rising with pitch (no source).
constexpr double kRising = 0.06;
constexpr double kClimb = 4; ///< semitones; a phrase of less range shows nothing
constexpr std::size_t kLeastOfPhrase = 4;
constexpr int kLeastNotes = 6;
/// Speed of sound in the warm, moist air of the tract.
constexpr double kSoundCmPerSecond = 35000;

/// Formant spacing in Hz by regression through the origin, F_i = dF (2i - 1) / 2: Reby & McComb 2003, Animal
/// Behaviour 65(3) 519-530. For a uniform tube it is c / 2L.
std::optional<double> spacing(const SungNote& n) {
    const auto& c = n.colour;
    if (!c.f1 || !c.f2 || !c.f3) return std::nullopt;
    return (0.5 * *c.f1 + 1.5 * *c.f2 + 2.5 * *c.f3) / (0.25 + 2.25 + 6.25);
}

void find_rising(const Material& m, const std::vector<std::optional<double>>& own, Draft& d) {
    int told = 0;
    struct Climb {
        std::vector<double> pitch, shift;
    };
    std::vector<Climb> climbs(m.phrases.size());
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const auto phrase = static_cast<std::size_t>(m.notes[i].phrase); // none is -1, past the end then
        if (phrase >= climbs.size() || !own[i]) continue;
        climbs[phrase].pitch.push_back(m.notes[i].written.value());
        climbs[phrase].shift.push_back(*own[i]);
    }
    for (std::size_t p = 0; p < m.phrases.size(); ++p) {
        const auto& [pitch, shift] = climbs[p];
        if (pitch.size() < kLeastOfPhrase) continue;
        const auto [low, high] = std::ranges::minmax(pitch);
        const auto line = fit_line(pitch, shift);
        if (!line || high - low < kClimb) continue;
        ++told;
        const double rise = line->slope * (high - low);
        if (rise >= kRising)
            d.tally.add("with the line", "rising", m.phrases[p]->span, rise,
                        "formants move up by " + fixed(std::expm1(rise) * 100, 0) +
                            " % as the line climbs, which may be a rising larynx");
    }
    d.tally.open("with the line", ShareBy::count, "climbing phrase", "climbing phrases", told, Seconds(0),
                 {"rising"});
}

} // namespace

void larynx(const Material& m, Draft& d) {
    const auto own = for_its_vowel(m.notes, spacing);
    int told = 0;
    Seconds time;
    Values length;
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        if (const auto s = spacing(m.notes[i])) length.add(kSoundCmPerSecond / (2 * *s), m.notes[i]);
        if (own[i]) ++told, time += m.notes[i].length();
    }
    add_measure(
        d.measures, "tract_length_cm", "Tract length the sound suggests", "cm", 1, length,
        "From the spacing of three formants. Only its change within one singer and vowel means anything, "
        "and lips change it as the larynx does.");
    if (told < kLeastNotes) {
        if (told > 0) d.say("Too few notes on like vowels to hint at larynx height.");
        return;
    }
    d.tally.open("height", ShareBy::time, "note", "of singing", told, time, {"neutral", "low", "high"});
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        if (!own[i]) continue;
        const auto& n = m.notes[i];
        const double shift = *own[i];
        const char* shade = shift >= kShifted ? "high" : shift <= -kShifted ? "low" : "neutral";
        d.tally.add("height", shade, n, std::abs(shift) < kShifted ? n.length().value() : std::abs(shift),
                    Material::name(n) + ": formants " + fixed(std::abs(std::expm1(shift)) * 100, 0) + " % " +
                        (shift < 0 ? "lower" : "higher") + " than on this singer's like vowels");
    }
    find_rising(m, own, d);
    d.say("Formant spacing suggests a higher larynx on " + counted(d.tally.count("high"), "note") +
          " and a lower one on " + std::to_string(d.tally.count("low")) + " of " + std::to_string(told) +
          "; lips and jaw may do the same.");
    d.good = "neutral";
    d.contrast = d.tally.count("rising") > 0 ? "rising" : "high";
    if (const int n = d.tally.count("rising"); n >= 2)
        d.find(FindingKind::watch, "rising", 0.4,
               "In " + counted(n, "climbing phrase") + " the formants move up with the pitch (" +
                   times(d.tally.spans("rising")) + "), which may be a larynx that rises along; have a look.",
               d.tally.best("rising"), true);
    else if (const auto third = d.tally.gathered_in("high");
             third && *third == 2 && d.tally.count("high") >= 0.2 * told)
        d.find(FindingKind::watch, "high", 0.3,
               "High notes may be sung with a raised larynx, by their formants (" +
                   times(d.tally.spans("high")) + "); have a look.",
               d.tally.best("high"), true);
}

} // namespace luft::profile
