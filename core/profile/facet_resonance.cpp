// Where the tone seems to ring, and its colour. A hint: room and microphone colour a voice as well.
#include "base/text.h"
#include "profile/against_own.h"
#include "profile/facets.h"
#include "profile/statistics.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <cmath>

namespace luft::profile {
namespace {

// Borders in dB against the singer's own usual value at that level (no source).
constexpr double kMoreRing = 3, kLessRing = -3;
constexpr double kBrighter = 3, kDarker = -3;
/// A note whose strongest partial near 3 kHz lies further down than this isn't called ringing, whatever the
/// others do (no source; singers above non-singers: Omori et al. 1996).
constexpr double kLeastRing = -20;
/// Median from which on ring is called a strength (no source).
constexpr double kClearRing = -12;
constexpr int kLeastNotes = 6;

} // namespace

void resonance(const Material& m, Draft& d) {
    const auto ring = levelled(m.notes, [](const SungNote& n) { return n.colour.ring; });
    const auto alpha = levelled(m.notes, [](const SungNote& n) { return n.colour.alpha; });
    Values rings, alphas, centres;
    int ring_told = 0, colour_told = 0;
    Seconds ring_time, colour_time;
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const auto& n = m.notes[i];
        rings.add(n.colour.ring, n);
        alphas.add(n.colour.alpha, n);
        centres.add(n.colour.centroid, n);
        if (!long_enough_for_pitch(n)) continue;
        if (ring[i]) ++ring_told, ring_time += n.length();
        if (alpha[i]) ++colour_told, colour_time += n.length();
    }
    add_measure(
        d.measures, "ring_db", "Ring (2-4 kHz to below)", "dB", 1, rings,
        "Strongest partial in 2-4 kHz against the strongest below 2 kHz; nearer 0 rings more. It didn't "
        "match experts' ranking of trained voices (Kenny & Mitchell).");
    add_measure(
        d.measures, "alpha_db", "Brightness (alpha ratio)", "dB", 1, alphas,
        "Energy in 1-5 kHz over energy in 50 Hz-1 kHz; higher is brighter. The microphone has its share.");
    add_measure(d.measures, "centroid_hz", "Centre of the spectrum", "Hz", 0, centres, "Higher is brighter.");
    if (ring_told < kLeastNotes && colour_told < kLeastNotes) return;

    d.tally.open("ring", ShareBy::time, "note", "of singing", ring_told, ring_time, {"ringing", "plain"});
    d.tally.open("colour", ShareBy::time, "note", "of singing", colour_told, colour_time, {"bright", "dark"});
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const auto& n = m.notes[i];
        if (!long_enough_for_pitch(n)) continue;
        if (ring[i] && *ring[i] >= kMoreRing && *n.colour.ring >= kLeastRing)
            d.tally.add("ring", "ringing", n, *ring[i],
                        Material::name(n) + " seems to ring: " + fixed(*ring[i], 1) +
                            " dB more near 3 kHz than usual here");
        if (ring[i] && *ring[i] <= kLessRing)
            d.tally.add("ring", "plain", n, -*ring[i],
                        Material::name(n) + " has little ring: " + fixed(-*ring[i], 1) +
                            " dB less near 3 kHz than usual here");
        if (alpha[i] && (*alpha[i] >= kBrighter || *alpha[i] <= kDarker)) {
            const bool bright = *alpha[i] > 0;
            d.tally.add("colour", bright ? "bright" : "dark", n, std::abs(*alpha[i]),
                        Material::name(n) + " sounds " + (bright ? "brighter" : "darker") + " by " +
                            fixed(std::abs(*alpha[i]), 1) + " dB (alpha ratio) than usual here");
        }
    }
    d.say("Ring near 3 kHz: " + spread_text(rings, "dB", 0) + " against the strongest partial below 2 kHz.");
    d.say("Against the singer's own usual sound " + counted(d.tally.count("bright"), "note is", "notes are") +
          " brighter and " + std::to_string(d.tally.count("dark")) + " darker; " +
          counted(d.tally.count("ringing"), "seems", "seem") + " to ring more.");
    d.good = "ringing";
    d.contrast = "plain";
    const double middle = median(rings.numbers()).value_or(-100);
    if (rings.size() >= kLeastNotes && middle >= kClearRing)
        d.find(FindingKind::strength, "ringing", 0.6,
               "The tone seems to ring: near 3 kHz it lies only " + fixed(std::abs(middle), 0) +
                   " dB under its strongest partial (median), which may carry it over accompaniment.",
               d.tally.best(d.good), true);
    if (const auto third = d.tally.gathered_in("plain"); third && d.tally.count("plain") >= 0.15 * ring_told)
        d.find(FindingKind::watch, "plain", 0.3,
               "The tone may lose its ring in the " + std::string(kThirdNames[*third]) + " range (" +
                   times(d.tally.spans("plain")) + ").",
               d.tally.best("plain"), true);
}

} // namespace luft::profile
