// How the pitch sits against the tuning of this performance.
#include "base/text.h"
#include "profile/correction_hint.h"
#include "profile/facets.h"
#include "profile/statistics.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

/// Share of centred notes from which on tuning is called a strength (no source).
constexpr double kMostlyCentred = 0.8;
/// A third or the phrase ends are called sharp or flat from this median on (half of kHeardAsOff; no source).
constexpr Cents kLeaning{12};
constexpr int kLeastNotes = 5;

std::string described(const SungNote& n) {
    return Material::name(n) + " " + off_pitch(n.note->cents);
}

void tally(const Material& m, Draft& d) {
    const int all = static_cast<int>(std::ranges::count_if(m.notes, long_enough_for_pitch));
    d.tally.open("centre of the note", ShareBy::count, "note", "notes", all, Seconds(0),
                 {"centred", "sharp", "flat"});
    d.tally.open("while held", ShareBy::count, "note", "notes", all, Seconds(0), {"drifting"});
    d.tally.open("way into the note", ShareBy::count, "note", "notes", all, Seconds(0), {"scooped"});
    for (const auto& n : m.notes) {
        if (!long_enough_for_pitch(n)) continue;
        const double off = n.note->cents.value();
        const double size = std::abs(off);
        const std::string words = described(n);
        if (size < kHeardAsOff.value())
            // The best example is a long note near the middle.
            d.tally.add("centre of the note", "centred", n, n.length().value() - size / 10, words);
        else
            d.tally.add("centre of the note", off > 0 ? "sharp" : "flat", n, size, words);
        const double drift = n.note->drift.value();
        if (n.length() >= kHeldNote && std::abs(drift) >= kDrifting.value())
            d.tally.add("while held", "drifting", n, std::abs(drift),
                        Material::name(n) + (drift > 0 ? " rises by " : " sinks by ") +
                            fixed(std::abs(drift), 0) + " cents while held");
        if (n.note->scoop && n.note->scoop->value() >= kScooped.value())
            d.tally.add("way into the note", "scooped", n, n.note->scoop->value(),
                        Material::name(n) + " is reached from " + fixed(n.note->scoop->value(), 0) +
                            " cents below");
    }
}

void find_worth_saying(const Draft& from, const Values& off, const Values& ends, Draft& d) {
    const auto all = static_cast<int>(off.size());
    if (all < kLeastNotes) return;
    const double centred = static_cast<double>(from.tally.count("centred")) / all;
    if (centred >= kMostlyCentred)
        d.find(FindingKind::strength, "centred", centred,
               percent(centred) + " of the notes sit within " + fixed(kHeardAsOff.value(), 0) +
                   " cents of their middle (median " + off_pitch(Cents(median(off.numbers()).value_or(0))) +
                   ")" + (d.hints.empty() ? "." : "; it may not be the singer's own doing, see Intonation."),
               d.tally.best("centred"), !d.hints.empty());
    for (int t = 0; t < 3; ++t) {
        const auto values = off.in_third(t);
        const auto middle = median(values);
        if (values.size() < static_cast<std::size_t>(kLeastNotes) || std::abs(*middle) < kLeaning.value())
            continue;
        const std::string shade = *middle > 0 ? "sharp" : "flat";
        d.find(FindingKind::watch, shade, std::min(1.0, std::abs(*middle) / 40),
               "The " + std::string(kThirdNames[t]) + " range leans " + shade + ": median " +
                   off_pitch(Cents(*middle)) + " over " + std::to_string(values.size()) + " notes.",
               d.tally.best(shade));
    }
    const auto end = median(ends.numbers());
    if (ends.size() >= static_cast<std::size_t>(kLeastNotes) && *end <= -kLeaning.value())
        d.find(FindingKind::watch, "flat", std::min(1.0, -*end / 40),
               "Last notes of phrases sink: median " + off_pitch(Cents(*end)) + " over " +
                   std::to_string(ends.size()) + " phrases; it may be the breath running out.",
               d.tally.best("flat"));
    const int drifting = from.tally.count("drifting");
    if (drifting >= 3 && drifting >= 0.15 * all)
        d.find(FindingKind::watch, "drifting", static_cast<double>(drifting) / all,
               counted(drifting, "held note") + " wander by " + fixed(kDrifting.value(), 0) +
                   " cents and more (" + times(d.tally.spans("drifting")) + ").",
               d.tally.best("drifting"));
    const int scooped = from.tally.count("scooped");
    if (scooped >= 3 && scooped >= 0.15 * all)
        d.find(FindingKind::watch, "scooped", 0.7 * scooped / all,
               counted(scooped, "note is", "notes are") + " reached from below (" +
                   times(d.tally.spans("scooped")) +
                   "): a colour of many styles; worth asking whether each is meant.",
               d.tally.best("scooped"));
}

} // namespace

void intonation(const Material& m, Draft& d) {
    tally(m, d);
    Values off, size, drift, scoop, ends;
    for (const auto& n : m.notes) {
        if (!long_enough_for_pitch(n)) continue;
        off.add(n.note->cents.value(), n);
        size.add(std::abs(n.note->cents.value()), n);
        if (n.length() >= kHeldNote) drift.add(n.note->drift.value(), n);
        if (n.note->scoop) scoop.add(n.note->scoop->value(), n);
        if (n.last_of_phrase) ends.add(n.note->cents.value(), n);
    }
    add_measure(d.measures, "off_pitch_cents", "Off the note", "cents", 0, off,
                "Above 0 is sharp. Counted from the nearest semitone at this performance's own tuning.");
    add_measure(d.measures, "distance_cents", "Distance from the note", "cents", 0, size,
                "The same without its direction; expert listeners pass 20 to 25 cents as in tune.");
    add_measure(d.measures, "phrase_end_cents", "Last note of a phrase", "cents", 0, ends,
                "Off the note where the breath is nearly spent.");
    add_measure(d.measures, "drift_cents", "Drift while held", "cents", 0, drift,
                "Pitch at the end less pitch at the start, notes of " + fixed(kHeldNote.value(), 1) +
                    " s and more.");
    add_measure(d.measures, "scoop_cents", "Depth of scoops", "cents", 0, scoop, "Scooped notes only.");
    if (!off.empty())
        d.say("Notes lie " + off_pitch(Cents(median(off.numbers()).value_or(0))) + " in the median, " +
              std::to_string(d.tally.count("centred")) + " of " + std::to_string(off.size()) + " within " +
              fixed(kHeardAsOff.value(), 0) + " cents of the middle of the note; " +
              std::to_string(d.tally.count("sharp")) + " above, " + std::to_string(d.tally.count("flat")) +
              " below. " + counted(d.tally.count("scooped"), "note is", "notes are") + " scooped.");
    if (m.source.listening && std::abs(interval(Hertz(440), m.source.listening->tuning).value()) >= 3)
        d.say("Tuning is taken as A4 = " + fixed(m.source.listening->tuning.value(), 1) + " Hz.");
    if (auto hint = correction_hint(m)) d.hints.push_back(std::move(*hint));
    d.good = "centred";
    d.contrast = d.tally.count("sharp") > d.tally.count("flat") ? "sharp" : "flat";
    find_worth_saying(d, off, ends, d);
}

} // namespace luft::profile
