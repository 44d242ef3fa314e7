// Where, how long and how loud the singer breathes.
#include "base/text.h"
#include "profile/facets.h"
#include "profile/statistics.h"
#include "profile/words.h"

#include <algorithm>

namespace luft::profile {
namespace {

/// Under this a breath is a quick (catch) breath; over it a full one. Common practice, no source.
constexpr Seconds kFullBreath{0.5};
/// A breath that lies less than this under the singing is easily heard over accompaniment; 20 to 40 dB is the
/// design assumption for close recordings (no source).
constexpr Decibels kProminent{20};
/// Share of well-placed breaths from which on the placing is called a strength (no source).
constexpr double kWellPlaced = 0.85;
constexpr int kLeastBreaths = 3;

std::string described(const marks::Breath& b) {
    std::string out = std::string(b.span.length() < kFullBreath ? "quick" : "full") + " breath of " +
                      length_text(b.span.length());
    if (b.evidence_kind == marks::BreathEvidence::inferred) out += ", inferred from the gap";
    if (b.below_voice) out += ", " + fixed(b.below_voice->value(), 0) + " dB under the voice";
    if (b.inside_phrase) out += ", while the line goes on";
    return out;
}

void measure(const Material& m, Draft& d) {
    Values lengths, below, between;
    const marks::Breath* before = nullptr;
    for (const auto* b : m.breaths) {
        const int third = m.third_at(b->span), quarter = m.quarter_of(b->span.middle());
        if (b->evidence_kind == marks::BreathEvidence::heard) {
            lengths.add(b->span.length().value(), third, quarter);
            if (b->below_voice) below.add(b->below_voice->value(), third, quarter);
        }
        if (before) between.add((b->span.start - before->span.end).value(), third, quarter);
        before = b;
    }
    add_measure(d.measures, "breath_length_s", "Length of a breath", "s", 2, lengths,
                "Heard breaths only: the gap of an inferred one may hold more than the breath.");
    add_measure(
        d.measures, "breath_below_voice_db", "Breath under the voice", "dB", 0, below,
        "How far a heard breath lies under the singing near it; more is quieter. Compression lifts it.");
    add_measure(d.measures, "between_breaths_s", "From breath to breath", "s", 1, between,
                "Rests and interludes are counted in.");
    if (!lengths.empty())
        d.say("A heard breath takes " + spread_text(lengths, "s", 2) +
              "; from one breath to the next it is " + spread_text(between, "s", 1) + ".");
}

void find_worth_saying(const Material& m, Draft& d, int all) {
    const int inside = d.tally.count("mid-phrase"), well = d.tally.count("well-placed");
    if (all >= kLeastBreaths && well >= kWellPlaced * all)
        d.find(FindingKind::strength, "well-placed", 0.9,
               "Breaths are taken where the line pauses: " + std::to_string(well) + " of " +
                   std::to_string(all) + (inside == 0 ? ", none in mid-phrase." : "."),
               d.tally.best("well-placed"));
    if (inside > 0)
        d.find(FindingKind::watch, "mid-phrase", 0.4 + static_cast<double>(inside) / all,
               "Of " + counted(all, "breath") + " " + std::to_string(inside) +
                   (inside == 1 ? " falls" : " fall") + " where the line goes on (" +
                   times(d.tally.spans("mid-phrase")) + ").",
               d.tally.best("mid-phrase"));

    std::vector<Span> prominent;
    for (const auto* b : m.breaths)
        if (b->below_voice && *b->below_voice < kProminent) prominent.push_back(b->span);
    if (static_cast<int>(prominent.size()) >= kLeastBreaths)
        d.find(FindingKind::watch, "audible", static_cast<double>(prominent.size()) / all * 0.6,
               counted(static_cast<int>(prominent.size()), "breath lies", "breaths lie") + " less than " +
                   fixed(kProminent.value(), 0) + " dB under the voice (" + times(prominent) +
                   "), loud enough to become part of the music; a choice in some styles.",
               d.tally.best("audible"));
}

} // namespace

void breaths(const Material& m, Draft& d) {
    const int all = static_cast<int>(m.breaths.size());
    if (all == 0) {
        if (!m.notes.empty()) d.say("No breath was sure enough to be counted.");
    }
    Seconds time;
    int heard = 0;
    for (const auto* b : m.breaths) {
        time += b->span.length();
        heard += b->evidence_kind == marks::BreathEvidence::heard ? 1 : 0;
    }
    d.tally.open("place", ShareBy::count, "breath", "breaths", all, time, {"well-placed", "mid-phrase"});
    d.tally.open("sound", ShareBy::count, "breath", "breaths", all, time, {"audible", "silent"});
    d.tally.open("length", ShareBy::count, "breath", "breaths", all, time, {"quick", "full"});
    for (const auto* b : m.breaths) {
        const double sure = b->confidence.value;
        const bool is_heard = b->evidence_kind == marks::BreathEvidence::heard;
        const std::string words = described(*b);
        d.tally.add("place", b->inside_phrase ? "mid-phrase" : "well-placed", b->span, sure, words);
        // Under accompaniment an unheard breath may only be covered, so it isn't called silent there.
        if (is_heard)
            d.tally.add("sound", "audible", b->span, b->below_voice ? -b->below_voice->value() : -60, words);
        else if (!m.accompanied)
            d.tally.add("sound", "silent", b->span, sure, words);
        const bool quick = b->span.length() < kFullBreath;
        d.tally.add("length", quick ? "quick" : "full", b->span,
                    quick ? -b->span.length().value() : b->span.length().value(), words);
    }
    if (all > 0)
        d.say(counted(all, "breath") + ", " + std::to_string(heard) + " heard in the sound and " +
              std::to_string(all - heard) + " inferred from a gap; " +
              counted(d.tally.count("mid-phrase"), "is", "are") + " taken while the line goes on.");
    measure(m, d);
    d.good = "well-placed";
    d.contrast = "mid-phrase";
    find_worth_saying(m, d, all);
}

} // namespace luft::profile
