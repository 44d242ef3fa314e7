// How loud the voice is, and how its level moves.
#include "base/text.h"
#include "profile/facets.h"
#include "profile/statistics.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

/// Span between the 10th and the 90th percentile of note levels that is called a wide or a narrow one (no
/// source; recordings of songs are often compressed).
constexpr double kWideSpan = 12;
constexpr double kNarrowSpan = 5;
constexpr int kLeastNotes = 5;

const char* key(marks::LevelShape shape) {
    using enum marks::LevelShape;
    switch (shape) {
    case growing:
        return "crescendo";
    case fading:
        return "decrescendo";
    case swelling:
        return "swell";
    case fluctuating:
        return "fluctuating";
    case steady:
        break;
    }
    return "steady";
}

std::string described(const SungNote& n, const char* shape) {
    const double change = n.note->level_change.value();
    return Material::name(n) + " of " + length_text(n.length()) + ", " + shape +
           (std::abs(change) >= 1
                ? " (" + fixed(std::abs(change), 0) + " dB " + (change > 0 ? "up" : "down") + ")"
                : "");
}

void tally(const Material& m, double usual, Draft& d) {
    Seconds held_time;
    int held = 0;
    for (const auto& n : m.notes)
        if (n.length() >= kHeldNote) ++held, held_time += n.length();
    d.tally.open("level", ShareBy::time, "note", "of singing", static_cast<int>(m.notes.size()), m.sung,
                 {"soft", "moderate", "loud"});
    d.tally.open("shape of held notes", ShareBy::count, "held note", "held notes", held, held_time,
                 {"steady", "crescendo", "decrescendo", "swell", "fluctuating"});
    for (const auto& n : m.notes) {
        const double over = n.note->level.value() - usual;
        const char* level = over > kLouder.value() ? "loud" : over < -kLouder.value() ? "soft" : "moderate";
        d.tally.add("level", level, n, over == 0 ? 0 : std::abs(over),
                    Material::name(n) + " lies " + fixed(std::abs(over), 0) + " dB " +
                        (over < 0 ? "under" : "over") + " the singer's usual level here");
        if (n.length() < kHeldNote) continue;
        const char* shape = key(n.note->shape);
        d.tally.add("shape of held notes", shape, n,
                    n.length().value() + std::abs(n.note->level_change.value()) / 6, described(n, shape));
    }
}

} // namespace

void dynamics(const Material& m, Draft& d) {
    if (m.notes.empty()) return;
    std::vector<double> levels;
    for (const auto& n : m.notes)
        levels.push_back(n.note->level.value());
    const double usual = median(levels).value_or(0);
    tally(m, usual, d);

    Values level, change;
    for (const auto& n : m.notes) {
        level.add(n.note->level.value() - usual, n);
        if (n.length() >= kHeldNote) change.add(n.note->level_change.value(), n);
    }
    add_measure(d.measures, "level_db", "Level of the notes", "dB", 0, level,
                "Against the median note of this recording, which is 0; not a level in the room.");
    add_measure(d.measures, "level_change_db", "Level over a held note", "dB", 0, change,
                "End less start; above 0 the note grows.");

    const double span = percentile(levels, 0.9).value_or(0) - percentile(levels, 0.1).value_or(0);
    if (levels.size() >= kLeastForMedian)
        d.say("Between its soft and its loud notes the voice spans " + fixed(span, 0) +
              " dB (middle 80 % of the notes)" +
              (m.accompanied ? "; accompaniment makes this less sure." : "."));
    const auto low = level.in_third(0), high = level.in_third(2);
    if (low.size() >= kLeastForMedian && high.size() >= kLeastForMedian) {
        const double lift = *median(high) - *median(low);
        d.say("The high range is " + fixed(std::abs(lift), 0) + " dB " + (lift < 0 ? "softer" : "louder") +
              " than the low range.");
    }
    if (m.source.listening && m.source.listening->loudness.range)
        d.say("The recording as a whole has a loudness range of " +
              fixed(m.source.listening->loudness.range->value(), 1) + " LU.");

    d.good = d.tally.count("swell") > 0 ? "swell" : "steady";
    d.contrast = "fluctuating";
    const auto all = static_cast<int>(levels.size());
    if (all >= kLeastNotes && span >= kWideSpan)
        d.find(FindingKind::strength, "", std::min(1.0, span / 20),
               "The dynamic range is wide: " + fixed(span, 0) + " dB lie between soft and loud notes.",
               d.tally.best("soft"));
    if (all >= kLeastNotes && span <= kNarrowSpan)
        d.find(FindingKind::watch, "moderate", 0.3,
               "Most notes are equally loud (" + fixed(span, 0) +
                   " dB between soft and loud); it may be the singing, or the recording was levelled.",
               d.tally.best("moderate"));
    const int wavering = d.tally.count("fluctuating");
    if (wavering >= 3 && wavering >= 0.2 * static_cast<double>(change.size()))
        d.find(FindingKind::watch, "fluctuating",
               static_cast<double>(wavering) / static_cast<double>(change.size()),
               counted(wavering, "held note") + " of " + std::to_string(change.size()) + " waver in level (" +
                   times(d.tally.spans("fluctuating")) + ").",
               d.tally.best("fluctuating"));
    const int swells = d.tally.count("swell");
    if (swells >= 2)
        d.find(FindingKind::strength, "swell", 0.5 + 0.05 * std::min(swells, 10),
               counted(swells, "held note swells and fades", "held notes swell and fade") +
                   " again: the dynamics are shaped (" + times(d.tally.spans("swell")) + ").",
               d.tally.best("swell"));
}

} // namespace luft::profile
