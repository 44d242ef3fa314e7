// Another register at the same notes.
#include "base/text.h"
#include "compare/differ.h"
#include "compare/place_words.h"

namespace luft::compare {
namespace {

const char* name(marks::Register r) {
    return r == marks::Register::chest ? "chest" : "head";
}

} // namespace

/// Notes after each other that differ alike are one difference: a single note's register is too unsure.
void register_differences(const Both& both, Found& found) {
    if (!both.error.registers) return;
    const auto& pairs = both.pairs.notes;
    const auto apart = [&](std::size_t i) {
        const auto &in_a = both.note_a(pairs[i]).sung_in, &in_b = both.note_b(pairs[i]).sung_in;
        return sure(both, pairs[i]) && in_a && in_b && *in_a != *in_b;
    };
    for (std::size_t first = 0; first < pairs.size(); ++first) {
        if (!apart(first)) continue;
        std::size_t last = first;
        while (last + 1 < pairs.size() && apart(last + 1) &&
               both.note_a(pairs[last + 1]).sung_in == both.note_a(pairs[first]).sung_in)
            ++last;
        const int count = static_cast<int>(last - first + 1);
        const double chance = by_chance(count, count, both.error.sung_in);
        const marks::Note &a = both.note_a(pairs[first]), &b = both.note_b(pairs[first]);
        if (chance < kByChance)
            found.push_back({DifferenceKind::other_register,
                             Span{a.span.start, both.note_a(pairs[last]).span.end},
                             Span{b.span.start, both.note_b(pairs[last]).span.end},
                             static_cast<double>(count),
                             Unit::times,
                             chance,
                             {1 - chance},
                             both.wording.b + " sings in " + name(*b.sung_in) + " register " +
                                 on_text(both.wording, a.span, b.span) + " (" +
                                 counted(static_cast<std::size_t>(count), "note") + "), " +
                                 inside(both.wording.a) + " in " + name(*a.sung_in) + " register."});
        first = last;
    }
}

} // namespace luft::compare
