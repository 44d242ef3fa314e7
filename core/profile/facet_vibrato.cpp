// The regular swing of pitch on held notes.
#include "base/text.h"
#include "profile/facets.h"
#include "profile/statistics.h"
#include "profile/swing.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <cmath>

namespace luft::profile {
namespace {

constexpr int kLeastNotes = 3;
constexpr double kMostlyEven = 0.75; ///< share of even ones that makes a strength (no source)
constexpr double kNotable = 0.3;     ///< share of an extreme that is worth a word (no source)

std::string described(const SungNote& n, const marks::Vibrato& v) {
    return Material::name(n) + " swings " + fixed(v.rate.value(), 1) + " times a second, " +
           fixed(v.extent.value(), 0) + " cents either way";
}

struct Sums {
    Values rate, extent, regularity;
    int held = 0, swinging = 0;
    Seconds held_time, swinging_time;
};

void add_swinging(const Material& m, const SungNote& n, const marks::Vibrato& v, Draft& d) {
    const std::string words = described(n, v);
    if (v.regularity >= kEvenVibrato)
        d.tally.add("swing", "even", n, v.regularity + n.length().value() / 10, words);
    else
        d.tally.add("swing", "uneven", n, 1 - v.regularity, words + ", unevenly");
    if (v.extent > kWideVibrato) d.tally.add("width", "wide", n, v.extent.value(), words);
    if (v.extent < kNarrowVibrato) d.tally.add("width", "narrow", n, -v.extent.value(), words);
    if (v.rate > kFastVibrato) d.tally.add("speed", "fast", n, v.rate.value(), words);
    if (v.rate < kSlowVibrato) d.tally.add("speed", "slow", n, -v.rate.value(), words);
    if (starts_straight(m.source.curves.f0, n.span()))
        d.tally.add("beginning", "late", n, n.length().value(),
                    Material::name(n) + " begins straight and swings later");
}

void find_worth_saying(const Sums& s, Draft& d) {
    if (s.swinging >= kLeastNotes) {
        const int even = d.tally.count("even");
        const double share = static_cast<double>(even) / s.swinging;
        if (share >= kMostlyEven)
            d.find(FindingKind::strength, "even", share,
                   "The vibrato is even on " + std::to_string(even) + " of " + std::to_string(s.swinging) +
                       " notes: " + spread_text(s.rate, "Hz", 1) + ", " + spread_text(s.extent, "cents", 0) +
                       " either way.",
                   d.tally.best("even"));
        else if (d.tally.count("uneven") >= kLeastNotes)
            d.find(FindingKind::watch, "uneven", 1 - share,
                   "The vibrato changes speed or width within " + std::to_string(d.tally.count("uneven")) +
                       " of " + std::to_string(s.swinging) + " notes (" + times(d.tally.spans("uneven")) +
                       ").",
                   d.tally.best("uneven"));
    }
    const auto extreme = [&](const std::string& shade, const std::string& words) {
        const int n = d.tally.count(shade);
        if (n >= kLeastNotes && n >= kNotable * s.swinging)
            d.find(FindingKind::watch, shade, static_cast<double>(n) / s.swinging * 0.8,
                   std::to_string(n) + " of " + std::to_string(s.swinging) + " vibrato notes " + words +
                       " (" + times(d.tally.spans(shade)) + ").",
                   d.tally.best(shade));
    };
    extreme("wide", "swing wider than a semitone either way");
    extreme("fast", "swing faster than the 7 a second usual in Western classical singing");
    extreme("slow", "swing slower than the 5 a second usual in Western classical singing");
}

} // namespace

void vibrato(const Material& m, Draft& d) {
    Sums s;
    for (const auto& n : m.notes) {
        const bool swings = n.note->vibrato.has_value();
        if (!swings && n.length() < kRoomForVibrato) continue;
        ++s.held;
        s.held_time += n.length();
        if (!swings) continue;
        ++s.swinging;
        s.swinging_time += n.length();
        s.rate.add(n.note->vibrato->rate.value(), n);
        s.extent.add(n.note->vibrato->extent.value(), n);
        s.regularity.add(n.note->vibrato->regularity, n);
    }
    const std::string time = "of held notes";
    d.tally.open("swing", ShareBy::time, "held note", time, s.held, s.held_time,
                 {"even", "uneven", "straight"});
    for (const auto& [axis, shades] : std::vector<std::pair<std::string, std::vector<std::string>>>{
             {"width", {"wide", "narrow"}}, {"speed", {"fast", "slow"}}, {"beginning", {"late"}}})
        d.tally.open(axis, ShareBy::count, "note with vibrato", "notes with vibrato", s.swinging,
                     s.swinging_time, shades);
    for (const auto& n : m.notes) {
        if (n.note->vibrato)
            add_swinging(m, n, *n.note->vibrato, d);
        else if (n.length() >= kRoomForVibrato)
            d.tally.add("swing", "straight", n, n.length().value(),
                        Material::name(n) + " is held straight for " + length_text(n.length()));
    }
    add_measure(d.measures, "vibrato_rate_hz", "Vibrato rate", "Hz", 1, s.rate,
                "5 to 7 Hz is usual in Western classical singing; other styles differ.");
    add_measure(d.measures, "vibrato_extent_cents", "Vibrato extent", "cents", 0, s.extent,
                "Either way from the middle: half the whole swing.");
    add_measure(d.measures, "vibrato_regularity", "Vibrato regularity", "", 2, s.regularity,
                "0 to 1; 1 means that every swing is like the one before.");
    if (s.held > 0)
        d.say("Of " + counted(s.held, "held note") + ", " + std::to_string(s.swinging) +
              " carry vibrato and " + std::to_string(d.tally.count("straight")) + " are straight.");
    if (s.swinging > 0)
        d.say("It swings at " + spread_text(s.rate, "Hz", 1) + " and " + spread_text(s.extent, "cents", 0) +
              " either way.");
    if (const int late = d.tally.count("late"); late > 0)
        d.say(capital(counted(late, "note")) + (late == 1 ? " starts" : " start") + " straight first.");
    d.good = "even";
    d.contrast = d.tally.count("uneven") > 0 ? "uneven" : "straight";
    find_worth_saying(s, d);
}

} // namespace luft::profile
