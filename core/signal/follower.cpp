#include "signal/follower.h"

#include <rubberband/RubberBandStretcher.h>

#include <algorithm>
#include <cmath>

namespace luft::signal {
namespace {

using RubberBand::RubberBandStretcher;

/// The finer engine is the one made for voices. Formants stay where they are, so that a voice in another key
/// remains that voice. 'High consistency' changes the pitch after a frame is made, always: what is known of
/// frames holds for that way only.
RubberBandStretcher::Options options(double pitch) {
    return RubberBandStretcher::OptionProcessRealTime | RubberBandStretcher::OptionEngineFiner |
           RubberBandStretcher::OptionThreadingNever | RubberBandStretcher::OptionFormantPreserved |
           (pitch == 1 ? 0 : RubberBandStretcher::OptionPitchHighConsistency);
}

// Tuned by hand on signal/follower_test.cpp and a steady tone: a longer way back loses the place, a change
// for each small difference makes the tone rough.
constexpr Seconds kBack{0.02};       // within which the path is to be reached again
constexpr double kNotWorthIt = 0.02; // change of ratio, as a share
constexpr double kMostRatio = 32;    // out per in, and in per out: beyond, the library has nothing to go by
constexpr std::size_t kTaken = 4096; // samples taken from it at a time

} // namespace

struct Follower::State {
    State(SampleRate rate, std::vector<Knot> path, double from, double pitch)
        : knots(std::move(path)), back(kBack.value() * rate.per_second),
          library(static_cast<std::size_t>(rate.per_second), 1, options(pitch), 1, pitch),
          frame(library.getSamplesRequired()), lead(library.getPreferredStartPad()) {
        library.setMaxProcessSize(2 * frame);
        // Frames overlap: those before the first one belong to its sound.
        const std::size_t delay = library.getStartDelay();
        surplus = 2 * delay;
        begin = std::floor(from) - static_cast<double>(delay);
        first = static_cast<std::int64_t>(std::floor(in_at(begin))) - static_cast<std::int64_t>(lead);
    }

    /// The input's place that stands at the output's place `out`.
    [[nodiscard]] double in_at(double out) {
        while (section + 2 < knots.size() && knots[section + 1].out <= out)
            ++section;
        const Knot &left = knots[section], &right = knots[section + 1];
        return left.in + (out - left.out) * (right.in - left.in) / (right.out - left.out);
    }

    /// Before the library makes its next frame. `wanted` is what it still wants for it.
    void steer(std::size_t wanted) {
        const double middle = static_cast<double>(first) + static_cast<double>(fed) -
                              static_cast<double>(frame - wanted) + static_cast<double>(lead);
        const double stands = begin + static_cast<double>(made);
        const double way = std::max(in_at(stands + back) - middle, back / kMostRatio);
        const double to = std::max(back / way, 1 / kMostRatio);
        if (std::abs(to / ratio - 1) <= kNotWorthIt) return;
        ratio = to;
        library.setTimeRatio(ratio);
    }

    void take(std::vector<float>& out) {
        for (int ready = library.available(); ready > 0; ready = library.available()) {
            taken.resize(std::min(static_cast<std::size_t>(ready), kTaken));
            float* to = taken.data();
            const std::size_t got = library.retrieve(&to, taken.size());
            if (got == 0) return;
            const std::size_t dropped = std::min(surplus, got);
            surplus -= dropped;
            made += got;
            out.insert(out.end(), taken.begin() + static_cast<std::ptrdiff_t>(dropped),
                       taken.begin() + static_cast<std::ptrdiff_t>(got));
        }
    }

    std::vector<Knot> knots;
    std::size_t section = 0; ///< between this knot and the next
    double back;             ///< kBack in samples
    RubberBandStretcher library;
    std::size_t frame;       ///< samples of the input that a frame takes
    std::size_t lead;        ///< from a frame's first sample to its middle
    std::size_t surplus = 0; ///< before the first sample out, still to be dropped
    double begin = 0;        ///< the output's place of the first frame's middle
    std::int64_t first = 0;
    std::int64_t fed = 0;       ///< samples that the library has been given
    std::int64_t made = 0;      ///< and has given
    double ratio = 1;           ///< as set in the library
    std::vector<float> waiting; ///< too few for a frame
    std::vector<float> taken;
};

Follower::Follower(SampleRate rate, std::vector<Knot> knots, double from, double pitch)
    : state_(std::make_unique<State>(rate, std::move(knots), from, pitch)) {}
Follower::Follower(Follower&&) noexcept = default;
Follower& Follower::operator=(Follower&&) noexcept = default;
Follower::~Follower() = default;

std::int64_t Follower::first() const {
    return state_->first;
}

void Follower::process(std::span<const float> in, std::vector<float>& out) {
    State& s = *state_;
    s.waiting.insert(s.waiting.end(), in.begin(), in.end());
    std::size_t used = 0;
    while (true) {
        s.take(out);
        const std::size_t wanted = std::max<std::size_t>(s.library.getSamplesRequired(), 1);
        if (s.waiting.size() - used < wanted) break;
        s.steer(wanted);
        const float* from = s.waiting.data() + used;
        s.library.process(&from, wanted, false);
        s.fed += static_cast<std::int64_t>(wanted);
        used += wanted;
    }
    s.waiting.erase(s.waiting.begin(), s.waiting.begin() + static_cast<std::ptrdiff_t>(used));
}

} // namespace luft::signal
