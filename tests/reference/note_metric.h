// How found notes (and other events with a start) are scored against the true ones: the rules of MIREX note
// tracking.
#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <span>
#include <vector>

namespace luft::reference {

struct TimedNote {
    double on = 0, off = 0, hz = 0;
};

struct Score {
    double hits = 0, said = 0, there = 0;
    [[nodiscard]] double precision() const { return said > 0 ? hits / said : 0; }
    [[nodiscard]] double recall() const { return there > 0 ? hits / there : 0; }
    [[nodiscard]] double f() const { return said + there > 0 ? 2 * hits / (said + there) : 0; }
    Score& operator+=(const Score& o) {
        hits += o.hits, said += o.said, there += o.there;
        return *this;
    }
};

/// For each of `there` true events the found one matched to it, or -1: as many pairs as can be had when each
/// is used once (maximum bipartite matching by augmenting paths, Kuhn 1955). `fits(truth, said)` by index.
inline std::vector<int> match(std::size_t there, std::size_t said,
                              const std::function<bool(std::size_t, std::size_t)>& fits) {
    std::vector<int> owner(said, -1);
    std::vector<bool> seen;
    const std::function<bool(std::size_t)> place = [&](std::size_t t) {
        for (std::size_t s = 0; s < said; ++s) {
            if (seen[s] || !fits(t, s)) continue;
            seen[s] = true;
            if (owner[s] < 0 || place(static_cast<std::size_t>(owner[s]))) {
                owner[s] = static_cast<int>(t);
                return true;
            }
        }
        return false;
    };
    for (std::size_t t = 0; t < there; ++t) {
        seen.assign(said, false);
        place(t);
    }
    std::vector<int> matched(there, -1);
    for (std::size_t s = 0; s < said; ++s)
        if (owner[s] >= 0) matched[static_cast<std::size_t>(owner[s])] = static_cast<int>(s);
    return matched;
}

enum class NoteRule { onset, onset_pitch, onset_pitch_offset };

/// Start within (<=) 50 ms, pitch within (<=) 50 cents, end within 20 % of the true length or 50 ms,
/// whichever is more; distances are rounded to four decimals before they are compared (as in mir_eval).
inline bool note_fits(const TimedNote& truth, const TimedNote& said, NoteRule rule, double window = 0.05) {
    const auto rounded = [](double x) { return std::round(x * 1e4) / 1e4; };
    if (rounded(std::abs(said.on - truth.on)) > window) return false;
    if (rule == NoteRule::onset) return true;
    if (rounded(std::abs(1200 * std::log2(said.hz / truth.hz))) > 50) return false;
    if (rule == NoteRule::onset_pitch) return true;
    return rounded(std::abs(said.off - truth.off)) <= std::max(0.2 * (truth.off - truth.on), 0.05);
}

inline std::vector<int> match_notes(std::span<const TimedNote> truth, std::span<const TimedNote> said,
                                    NoteRule rule, double window = 0.05) {
    return match(truth.size(), said.size(),
                 [&](std::size_t t, std::size_t s) { return note_fits(truth[t], said[s], rule, window); });
}

inline Score score_of(const std::vector<int>& matched, std::size_t said) {
    return {static_cast<double>(std::ranges::count_if(matched, [](int m) { return m >= 0; })),
            static_cast<double>(said), static_cast<double>(matched.size())};
}

inline Score score_notes(std::span<const TimedNote> truth, std::span<const TimedNote> said, NoteRule rule,
                         double window = 0.05) {
    return score_of(match_notes(truth, said, rule, window), said.size());
}

} // namespace luft::reference
