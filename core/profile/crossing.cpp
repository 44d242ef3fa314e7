#include "profile/crossing.h"

#include "profile/statistics.h"

#include <algorithm>

namespace luft::profile {
namespace {

constexpr Seconds kNear{0.08};
constexpr Seconds kAround{0.3};
constexpr double kHole = 8;      ///< dB
constexpr int kSilentFrames = 4; ///< 40 ms
constexpr double kSung = 0.5;    ///< voicing

} // namespace

Crossing crossing_of(const voice::Curves& curves, const marks::Switch& change) {
    if (change.leap) return Crossing::unknown;
    const Span near{change.time - kNear, change.time + kNear};
    const auto close = curves.level.within(near);
    const auto wide = curves.level.within({change.time - kAround, change.time + kAround});
    const auto usual = median(std::vector<double>(wide.begin(), wide.end()));
    const auto least = percentile(std::vector<double>(close.begin(), close.end()), 0);
    if (!usual || !least) return Crossing::unknown;
    if (*least < *usual - kHole) return Crossing::broken;
    int run = 0, longest = 0;
    for (const float v : curves.voicing.within(near)) {
        run = v < kSung ? run + 1 : 0;
        longest = std::max(longest, run);
    }
    return longest >= kSilentFrames ? Crossing::broken : Crossing::smooth;
}

} // namespace luft::profile
