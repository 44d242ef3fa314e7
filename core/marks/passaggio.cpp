#include "marks/passaggio.h"

#include "signal/statistics.h"

#include <algorithm>

namespace luft::marks {

void Passaggio::fit(const std::vector<double>& pitch, const std::vector<double>& head) {
    constexpr double kUsual = 0.3, kSteepest = 0.8;      // log odds a semitone
    constexpr double kHeldLevel = 0.1, kHeldSlope = 4.0; // precision of what is known beforehand
    constexpr double kSampleWeight = 1 / 3.0;
    constexpr int kRounds = 2; // a step goes on from the one before
    for (int round = 0; round < kRounds; ++round) {
        double up0 = -kHeldLevel * level_, up1 = kHeldSlope * (kUsual - slope_);
        double bend00 = kHeldLevel, bend01 = 0, bend11 = kHeldSlope;
        for (std::size_t i = 0; i < pitch.size(); ++i) {
            const double x = pitch[i] - centre_, p = signal::logistic(level_ + slope_ * x);
            const double off = kSampleWeight * (head[i] - p), w = kSampleWeight * p * (1 - p);
            up0 += off, up1 += off * x;
            bend00 += w, bend01 += w * x, bend11 += w * x * x;
        }
        const double area = bend00 * bend11 - bend01 * bend01;
        level_ += (bend11 * up0 - bend01 * up1) / area;
        slope_ = std::clamp(slope_ + (bend00 * up1 - bend01 * up0) / area, 0.0, kSteepest);
    }
}

double Passaggio::head_odds(double midi_pitch) const {
    constexpr double kMost = 4;
    return std::clamp(level_ + slope_ * (midi_pitch - centre_), -kMost, kMost);
}

} // namespace luft::marks
