#include "singer/pitch_plan.h"

#include "singer/loudness_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::singer {

using marks::OffsetKind;
using marks::Register;
using std::numbers::pi;

std::vector<PlacedSwitch> switches_of(const Layout& layout) {
    std::vector<PlacedSwitch> out;
    const PlacedNote* before = nullptr;
    Register last = Register::chest;
    for (const PlacedNote& n : layout.notes) {
        if (before && n.note.sung_in != last)
            out.push_back({n.joined ? n.whole.start : n.voiced.start, last, n.note.sung_in, n.joined,
                           n.note.broken_switch});
        last = n.note.sung_in;
        if (n.note.flip && n.note.flip->to != last) {
            out.push_back(
                {n.whole.start + n.note.flip->after, last, n.note.flip->to, true, n.note.flip->broken});
            last = n.note.flip->to;
        }
        before = &n;
    }
    return out;
}

PitchPlan::PitchPlan(const Layout& layout, const Singer& singer, Random random)
    : notes_(layout.notes), switches_(switches_of(layout)), tuning_(pitch_of(singer.tuning).value() - 69),
      wander_(singer.wander.value() / 100), glide_(singer.glide.value()) {
    for (double& p : phases_)
        p = 2 * pi * random.uniform();
    for (const PlacedNote& n : notes_) {
        auto& cycles = vibrato_.emplace_back();
        if (!n.note.vibrato) continue;
        const VibratoPlan& v = *n.note.vibrato;
        for (double t = (n.voiced.start + v.delay).value(); t < n.whole.end.value() + 0.1;) {
            const double rate = v.rate.value() * std::clamp(1 + v.unrest * random.bell(), 0.5, 1.7);
            const double extent = v.extent.value() * std::clamp(1 + v.unrest * random.bell(), 0.2, 2.0);
            cycles.push_back({t, rate, extent});
            t += 1 / rate;
        }
    }
}

double PitchPlan::swing(std::size_t i, double t) const {
    const auto& cycles = vibrato_[i];
    const auto next = std::upper_bound(cycles.begin(), cycles.end(), t,
                                       [](double x, const Cycle& c) { return x < c.start; });
    if (next == cycles.begin()) return 0;
    const Cycle& c = *std::prev(next);
    constexpr double kGrow = 0.25; // s until the swing is full
    const double grown = std::clamp((t - cycles.front().start) / kGrow, 0.0, 1.0);
    return grown * c.extent / 100 * std::sin(2 * pi * std::min(1.0, c.rate * (t - c.start)));
}

double PitchPlan::alone(std::size_t i, double t) const {
    const PlacedNote& n = notes_[i];
    const double from = n.voiced.start.value(), to = n.voiced.end.value();
    const double u = std::clamp((t - from) / std::max(1e-3, to - from), 0.0, 1.0);
    constexpr double kScoopTime = 0.16, kSlump = 0.45; // s; semitones that a trailing note sinks
    double p = n.note.pitch.value() + n.note.off.value() / 100 + n.note.drift.value() / 100 * (u - 0.5);
    p -= n.note.scoop.value() / 100 * (1 - step_up(t, from, std::min(kScoopTime, 0.4 * (to - from))));
    if (n.note.end == OffsetKind::trailing && !n.joins && !n.cut) p -= kSlump * step_up(t, to - 0.25, 0.25);
    return p + swing(i, t);
}

double PitchPlan::at(std::size_t i, double t) const {
    double p = alone(i, t);
    // Quick notes get quick glides, so that each of them reaches its pitch.
    const double shortest = std::min(notes_[i].whole.length().value(), 1.0);
    const Neighbour n = neighbour(notes_, i, t, std::min(glide_, 0.5 * shortest));
    if (n.share > 0) p += (alone(n.index, t) - p) * n.share;
    constexpr std::array<double, 3> kRates{0.7, 1.3, 2.3}; // Hz, slower than any vibrato
    for (std::size_t k = 0; k < 3; ++k)
        p += wander_ * std::sqrt(2.0 / 3) * std::sin(2 * pi * kRates[k] * t + phases_[k]);
    return p + tuning_ + crack(t).semitones;
}

Crack PitchPlan::crack(double t) const {
    Crack c;
    constexpr double kWide = 0.045; // s to each side
    for (const PlacedSwitch& s : switches_) {
        const double x = (t - s.time.value()) / kWide;
        if (!s.joined || std::abs(x) >= 1) continue;
        const double bump = 0.5 + 0.5 * std::cos(pi * x);
        const double up = s.to == Register::head ? 1 : -1;
        c.level_db -= bump * (s.broken ? 10 : 1.5);
        c.semitones += up * bump * (s.broken ? 1.2 : 0.1);
        c.roughness = std::max(c.roughness, s.broken ? bump : 0);
    }
    return c;
}

} // namespace luft::singer
