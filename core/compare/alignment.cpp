#include "compare/alignment.h"

#include <algorithm>

namespace luft::compare {
namespace {

std::optional<Seconds> carry(const std::vector<Stretch>& stretches, Seconds t, Seconds Pair::*from,
                             Seconds Pair::*to) {
    for (const Stretch& s : stretches) {
        if (t < s.knots.front().*from || t > s.knots.back().*from) continue;
        const auto after =
            std::ranges::upper_bound(s.knots, t, {}, [from](const Pair& p) { return p.*from; });
        if (after == s.knots.begin()) return s.knots.front().*to;
        if (after == s.knots.end()) return s.knots.back().*to;
        const Pair &left = *(after - 1), &right = *after;
        return left.*to + (right.*to - left.*to) * ((t - left.*from) / (right.*from - left.*from));
    }
    return std::nullopt;
}

/// Whether the path goes on from `a` to `b` without a gap.
bool goes_on(const Alignment& alignment, Seconds from, Seconds to) {
    for (const Alone& alone : alignment.only_a)
        if (alone.span.overlaps({from, to})) return false;
    for (std::size_t i = 1; i < alignment.stretches.size(); ++i) {
        const Pair &left = alignment.stretches[i - 1].knots.back(),
                   &right = alignment.stretches[i].knots.front();
        if (from < right.a && left.a < to && !(left == right)) return false;
        if (from < right.a && left.a <= to && left.b < right.b) return false;
    }
    return true;
}

} // namespace

std::optional<Seconds> Alignment::to_b(Seconds a) const {
    return carry(stretches, a, &Pair::a, &Pair::b);
}

std::optional<Seconds> Alignment::to_a(Seconds b) const {
    return carry(stretches, b, &Pair::b, &Pair::a);
}

std::vector<TempoPoint> tempo_curve(const Alignment& alignment, Seconds over) {
    constexpr Seconds kEvery{2};
    std::vector<TempoPoint> out;
    if (alignment.stretches.empty()) return out;
    const Seconds end = alignment.stretches.back().a().end;
    for (Seconds t = alignment.stretches.front().a().start + over / 2; t <= end - over / 2; t += kEvery) {
        const Seconds from = t - over / 2, to = t + over / 2;
        const auto left = alignment.to_b(from), right = alignment.to_b(to);
        if (!left || !right || *right <= *left || !goes_on(alignment, from, to)) continue;
        out.push_back({t, (to - from) / (*right - *left)});
    }
    return out;
}

} // namespace luft::compare
