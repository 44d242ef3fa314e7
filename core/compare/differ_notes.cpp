// Notes that only one sings within a phrase of both.
#include "base/text.h"
#include "compare/differ.h"
#include "compare/place_words.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::compare {
namespace {

constexpr Seconds kJoined{0.3};       // added notes this close belong to one turn; own value
constexpr Seconds kLeastLength{0.07}; // shorter bits are glides; own value
constexpr double kElsewhere = 0.75;   // semitones off what the other sings there

/// What the other side sings in the middle half of that time; none where it is silent.
std::optional<MidiPitch> sung_there(const Side& side, Span time) {
    const auto f = signal::median(side.f0.within(time));
    return f ? std::optional(pitch_of(Hertz(*f))) : std::nullopt;
}

struct Group {
    Span here;
    int notes = 0, elsewhere = 0;
    Confidence confidence; ///< the highest of its notes'
};

/// Added notes in groups; `away` says whether the other side really sings another pitch there.
template <class Away>
std::vector<Group> groups_of(const Side& side, const std::vector<std::size_t>& added, Away away) {
    std::vector<Group> out;
    for (const std::size_t i : added) {
        const marks::Note& note = side.notes.at(i);
        if (note.span.length() < kLeastLength) continue;
        if (out.empty() || note.span.start - out.back().here.end > kJoined)
            out.push_back({note.span, 0, 0, {0}});
        Group& group = out.back();
        group.here.end = note.span.end;
        group.notes += 1;
        group.elsewhere += away(note);
        group.confidence = std::max(group.confidence, note.confidence);
    }
    // Where the other sings the same pitch on, the ear has only split a note.
    std::erase_if(out, [](const Group& g) { return g.elsewhere == 0 || g.confidence < kSureNote; });
    return out;
}

/// Off the other's pitch, and not by octaves, which is where an ear slips.
bool off(double semitones) {
    return std::abs(std::remainder(semitones, 12)) > kElsewhere;
}

} // namespace

void note_differences(const Both& both, Found& found) {
    const Wording& w = both.wording;
    const double key = both.alignment.semitones + both.alignment.tuning.value() / 100;
    const auto span_in = [&](Span s, bool of_a) -> std::optional<Span> {
        const auto at = [&](Seconds t) { return of_a ? both.alignment.to_b(t) : both.alignment.to_a(t); };
        const auto start = at(s.start), end = at(s.end);
        return start && end && *end > *start ? std::optional(Span{*start, *end}) : std::nullopt;
    };
    const auto tell = [&](const Side& side, const Side& other, const std::vector<std::size_t>& added,
                          bool of_a) {
        const auto away = [&](const marks::Note& note) {
            const auto there = span_in(note.span, of_a);
            const auto pitch = there ? sung_there(other, *there) : std::nullopt;
            return pitch && off((note.pitch - *pitch).value() + (of_a ? key : -key));
        };
        for (const Group& g : groups_of(side, added, away)) {
            const auto there = span_in(g.here, of_a);
            const double chance = by_chance(g.elsewhere, g.elsewhere, both.error.lone_note);
            if (!there || chance >= kByChance || !trusted(both, of_a ? g.here.middle() : there->middle()))
                continue;
            const Span a = of_a ? g.here : *there, b = of_a ? *there : g.here;
            const std::string notes = counted(static_cast<std::size_t>(g.notes), "note");
            found.push_back({DifferenceKind::added_notes, a, b,
                             static_cast<double>(of_a ? -g.notes : g.notes), Unit::times, chance,
                             g.confidence,
                             of_a ? w.b + " sings plain " + on_text(w, a, b) + " where " + inside(w.a) +
                                        " adds " + notes + "."
                                  : w.b + " adds " + notes + " " + on_text(w, a, b) + "."});
        }
    };
    tell(both.b, both.a, both.pairs.added_by_b, false);
    tell(both.a, both.b, both.pairs.added_by_a, true);
}

} // namespace luft::compare
