// Key, tuning and range of the whole.
#include "base/text.h"
#include "compare/differ.h"
#include "compare/place_words.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>

namespace luft::compare {
namespace {

// Own values: what a teacher would speak of.
constexpr Cents kLeastTuning{10};
constexpr double kLeastRange = 0.75; // semitones
constexpr Confidence kSureRange{0.8};
/// A note that one hearing misses moves the tessitura by up to a step: 0.9 semitones at most on seeds 971 to
/// 974.
constexpr double kMissedNote = 0.5;
constexpr double kFourth = 5; // beyond the common notes, an added one is rather the ear's slip; own value
constexpr Seconds kLeastLength{0.12};

struct Weighed {
    double pitch = 0, seconds = 0;
};

/// Notes by pitch, without those that an ear may have slipped in: unpaired ones in a phrase of both, unsure
/// ones, glimpses, and pairs an octave apart.
std::vector<Weighed> range_of(const Side& side, const std::set<std::size_t>& left_out) {
    std::vector<Weighed> out;
    for (std::size_t i = 0; i < side.notes.size(); ++i) {
        const marks::Note& n = side.notes[i];
        if (n.confidence >= kSureRange && n.span.length() >= kLeastLength && !left_out.contains(i))
            out.push_back({n.pitch.value(), n.span.length().value()});
    }
    std::ranges::sort(out, {}, &Weighed::pitch);
    return out;
}

/// Leaves out the added notes that lie far from all others.
void leave_out_far(const Side& side, std::set<std::size_t>& left_out, const std::vector<std::size_t>& added) {
    std::set<std::size_t> without = left_out;
    without.insert(added.begin(), added.end());
    const auto common = range_of(side, without);
    for (const std::size_t i : added) {
        const double pitch = side.notes.at(i).pitch.value();
        if (common.empty() || pitch < common.front().pitch - kFourth || pitch > common.back().pitch + kFourth)
            left_out.insert(i);
    }
}

/// Middle of the pitches between which half of the sung time lies.
double middle_of(const std::vector<Weighed>& notes) {
    double all = 0;
    for (const Weighed& n : notes)
        all += n.seconds;
    const auto at = [&](double share) {
        double so_far = 0;
        for (const Weighed& n : notes) {
            so_far += n.seconds;
            if (so_far >= share * all) return n.pitch;
        }
        return notes.back().pitch;
    };
    return (at(0.25) + at(0.75)) / 2;
}

std::string away(double semitones) {
    return fixed(std::abs(semitones), 1) + " semitones " + (semitones > 0 ? "higher" : "lower");
}

void key(const Both& both, Found& found) {
    const Wording& w = both.wording;
    const int n = both.alignment.semitones;
    double sure = 0;
    for (const Stretch& s : both.alignment.stretches)
        sure = std::max(sure, s.confidence.value);
    if (n != 0)
        found.push_back({DifferenceKind::key,
                         {},
                         {},
                         static_cast<double>(n),
                         Unit::semitones,
                         both.error.tuning.value() / 100,
                         {sure},
                         w.b + " sings " + counted(static_cast<std::size_t>(std::abs(n)), "semitone") +
                             (n > 0 ? " higher than " : " lower than ") + inside(w.a) + "."});
    const double cents = both.alignment.tuning.value();
    if (const auto confidence = beyond_error(cents, both.error.tuning.value(), kLeastTuning.value()))
        found.push_back({DifferenceKind::tuning,
                         {},
                         {},
                         cents,
                         Unit::cents,
                         both.error.tuning.value(),
                         *confidence,
                         w.b + " is tuned " + fixed(std::abs(cents), 0) + " cents " +
                             (cents > 0 ? "higher" : "lower") + " than " + inside(w.a) + "."});
}

void range(const Both& both, Found& found) {
    const auto slips = [](const auto& alone, const auto& phrases_alone, const Side& side) {
        std::set<std::size_t> out(alone.begin(), alone.end());
        std::erase_if(out, [&](std::size_t i) {
            return std::ranges::any_of(phrases_alone, [&](std::size_t p) {
                return side.phrases.at(p).span.contains(side.notes.at(i).span.middle());
            });
        });
        return out;
    };
    auto left_a = slips(both.pairs.notes_only_a, both.pairs.phrases_only_a, both.a),
         left_b = slips(both.pairs.notes_only_b, both.pairs.phrases_only_b, both.b);
    for (const NotePair& p :
         both.pairs.notes) // a pair is in or out as a whole, so that both have the same notes
        if (by_octaves(p.apart) || of_both(both, p) < kSureRange ||
            std::min(both.note_a(p).span.length(), both.note_b(p).span.length()) < kLeastLength)
            left_a.insert(p.a), left_b.insert(p.b);
    leave_out_far(both.a, left_a, both.pairs.added_by_a);
    leave_out_far(both.b, left_b, both.pairs.added_by_b);
    const auto a = range_of(both.a, left_a), b = range_of(both.b, left_b);
    if (a.size() < 5 || b.size() < 5) return;
    const Wording& w = both.wording;
    const double by_key = both.alignment.semitones + both.alignment.tuning.value() / 100,
                 error = both.error.pitch.value() / 100;
    const auto tell = [&](DifferenceKind kind, double size, double unsure, const std::string& what,
                          const std::string& values) {
        if (const auto confidence = beyond_error(size, unsure, kLeastRange))
            found.push_back({kind,
                             {},
                             {},
                             size,
                             Unit::semitones,
                             unsure,
                             {confidence->value * kSureRange.value},
                             what + " of " + inside(w.b) + " is " + away(size) + " than that of " +
                                 inside(w.a) + values + ", the key taken out."});
    };
    const auto named = [](double x, double y) {
        return " (" + note_name(MidiPitch(y)) + " against " + note_name(MidiPitch(x)) + ")";
    };
    tell(DifferenceKind::lowest_note, b.front().pitch - a.front().pitch - by_key, error, "The lowest note",
         named(a.front().pitch, b.front().pitch));
    tell(DifferenceKind::highest_note, b.back().pitch - a.back().pitch - by_key, error, "The highest note",
         named(a.back().pitch, b.back().pitch));
    tell(DifferenceKind::tessitura, middle_of(b) - middle_of(a) - by_key, kMissedNote,
         "The middle of the tessitura", "");
}

} // namespace

void whole_differences(const Both& both, Found& found) {
    key(both, found);
    range(both, found);
}

} // namespace luft::compare
