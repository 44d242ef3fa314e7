#include "marks/voice_breaks.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr std::size_t kNear = 4, kFar = 9; // frames to either side that a break is held against
constexpr float kDip = 4;                  // dB
constexpr double kBend = 40;               // cents

bool breaks_at(const voice::Curves& c, std::size_t i) {
    const auto side = [](std::span<const float> curve, std::size_t from) {
        return curve.subspan(from, kFar - kNear + 1);
    };
    const auto level = c.level.raw(), f0 = c.f0.raw();
    const float before = *std::ranges::max_element(side(level, i - kFar));
    const float after = *std::ranges::max_element(side(level, i + kNear));
    if (!(std::min(before, after) - level[i] >= kDip)) return false;
    const auto pitch_before = signal::median(side(f0, i - kFar));
    const auto pitch_after = signal::median(side(f0, i + kNear)), here = signal::median(f0.subspan(i - 1, 3));
    if (!pitch_before || !pitch_after || !here) return true;
    const double from = 1200 * std::log2(*here / *pitch_before), to = 1200 * std::log2(*here / *pitch_after);
    return from * to > 0 && std::min(std::abs(from), std::abs(to)) > kBend;
}

} // namespace

std::vector<bool> find_breaks(const voice::Curves& curves, std::size_t begin, std::size_t end) {
    std::vector<bool> found(end - begin);
    for (std::size_t i = begin + kFar; i + kFar < end; ++i)
        if (breaks_at(curves, i))
            std::fill_n(found.begin() + static_cast<std::ptrdiff_t>(i - kNear - begin), 2 * kNear + 1, true);
    return found;
}

} // namespace luft::marks
