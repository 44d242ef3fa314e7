#include "profile/swing.h"

#include "profile/statistics.h"

namespace luft::profile {
namespace {

constexpr double kPart = 0.4;
constexpr std::size_t kLeastFrames = 12;
/// The beginning counts as straight when it swings by less than this share of the end (no source) …
constexpr double kMuchLess = 0.4;
/// … and the end swings by at least this much between its percentiles (no source).
constexpr double kRealSwing = 30;

std::optional<double> swing(const Curve<Hertz>& f0, Span part) {
    std::vector<double> x, cents;
    const auto values = f0.within(part);
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (!(values[i] > 0)) continue;
        x.push_back(static_cast<double>(i));
        cents.push_back(interval(Hertz(55), Hertz(static_cast<double>(values[i]))).value());
    }
    const auto line = fit_line(x, cents);
    if (cents.size() < kLeastFrames || !line) return std::nullopt;
    for (std::size_t i = 0; i < cents.size(); ++i)
        cents[i] -= line->at(x[i]);
    return *percentile(cents, 0.9) - *percentile(cents, 0.1);
}

} // namespace

bool starts_straight(const Curve<Hertz>& f0, Span note) {
    // The first tenth is left out: a scoop would pass for a swing.
    const auto first = swing(f0, {note.start + note.length() * 0.1, note.start + note.length() * kPart});
    const auto last = swing(f0, {note.end - note.length() * kPart, note.end});
    return first && last && *last >= kRealSwing && *first < kMuchLess * *last;
}

} // namespace luft::profile
