#include "compare/differ.h"

#include <algorithm>
#include <cmath>

namespace luft::compare {

bool sure(const Both& both, const NotePair& pair) {
    return of_both(both, pair) >= kSureNote && trusted(both, both.note_a(pair).span.middle());
}

Confidence of_both(const Both& both, const NotePair& pair) {
    return std::min(both.note_a(pair).confidence, both.note_b(pair).confidence);
}

bool by_octaves(Cents apart) {
    return std::abs(apart.value()) > 600 && std::abs(std::remainder(apart.value(), 1200)) < 75;
}

bool cut_alike(const Both& both, const NotePair& pair) {
    constexpr Seconds kInside{0.12}; // own value; starts are 0.08 s apart at most (99 %, ear_errors.cpp)
    const auto begins_inside = [&](const marks::Note& note, const std::vector<marks::Note>& others,
                                   auto carry) {
        return std::ranges::any_of(others, [&](const marks::Note& other) {
            const auto at = carry(other.span.start);
            return at && note.span.start + kInside < *at && *at < note.span.end - kInside;
        });
    };
    return !begins_inside(both.note_a(pair), both.b.notes, [&](Seconds t) {
        return both.alignment.to_a(t);
    }) && !begins_inside(both.note_b(pair), both.a.notes, [&](Seconds t) { return both.alignment.to_b(t); });
}

std::vector<NotePair> pairs_in(const Both& both, const PhrasePair& phrases) {
    const Span a = whole_of(phrases.a, both.a.phrases), b = whole_of(phrases.b, both.b.phrases);
    std::vector<NotePair> out;
    for (const NotePair& p : both.pairs.notes)
        if (a.contains(both.note_a(p).span.middle()) && b.contains(both.note_b(p).span.middle()))
            out.push_back(p);
    return out;
}

Span whole_of(const std::vector<std::size_t>& phrases, const std::vector<marks::Phrase>& all) {
    return {all.at(phrases.front()).span.start, all.at(phrases.back()).span.end};
}

bool sings_on(const Side& side, Span time) {
    Seconds silent;
    for (const float f : side.f0.within(time)) {
        silent = std::isnan(f) ? silent + kHop : Seconds(0);
        if (silent >= kPause) return false;
    }
    return time.start >= Seconds(0) && time.end <= kHop * static_cast<double>(side.f0.size());
}

Surely surely(const Both& both, Confidence mark) {
    const double chance = std::max(1 - mark.value, both.error.breath);
    return {chance, {1 - chance}};
}

bool trusted(const Both& both, Seconds a) {
    return std::ranges::any_of(both.alignment.stretches, [a](const Stretch& s) {
        return s.a().start <= a && a <= s.a().end && s.confidence.value >= 0.5;
    });
}

} // namespace luft::compare
