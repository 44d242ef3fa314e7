#include "bench/pairs/meet.h"

#include "marks/listen.h"
#include "signal/statistics.h"
#include "singer/memory_source.h"

#include <algorithm>
#include <numeric>

namespace luft::bench {

Heard hear(const Singing& sung, int semitones, bool harmony) {
    singer::MemorySource source(sung.samples, sung.rate, sung.channels);
    Heard out;
    out.semitones = semitones;
    out.said.side = compare::side_of(marks::listen(source));
    if (harmony) out.said.side.harmony = compare::hear_harmony(source, out.said.side.tuning);
    out.said.notes = compare::test::placed(sung.notes, {}, out.said.side);
    return out;
}

void Meeting::add(const Heard& a, const Heard& b) {
    const auto found = compare::align(a.said.side, b.said.side);
    const auto e = compare::test::errors_of(a.said, b.said, found);
    errors_ms.insert(errors_ms.end(), e.all_ms.begin(), e.all_ms.end());
    notes += e.shared, lost += e.lost, ++pairs;
    wrong_keys += found.semitones != b.semitones - a.semitones;
    worst_median = std::max(worst_median, e.median_ms);
}

Meeting& Meeting::operator+=(const Meeting& other) {
    errors_ms.insert(errors_ms.end(), other.errors_ms.begin(), other.errors_ms.end());
    notes += other.notes, lost += other.lost, pairs += other.pairs, wrong_keys += other.wrong_keys;
    worst_median = std::max(worst_median, other.worst_median);
    return *this;
}

std::optional<double> Meeting::median() const {
    return signal::median(std::span<const double>(errors_ms));
}
std::optional<double> Meeting::mean() const {
    if (errors_ms.empty()) return std::nullopt;
    return std::accumulate(errors_ms.begin(), errors_ms.end(), 0.0) / static_cast<double>(errors_ms.size());
}
std::optional<double> Meeting::most() const {
    return signal::quantile(std::span<const double>(errors_ms), 0.95);
}

} // namespace luft::bench
