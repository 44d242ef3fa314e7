#include "bench/loudness_check.h"

#include "reference/loudness_signals.h"
#include "scenes/tones.h"
#include "voice/loudness.h"

namespace luft::bench {
namespace {

voice::Loudness loudness_of(const reference::ToneCase& c) {
    constexpr SampleRate kRate{48000};
    std::vector<float> stereo;
    for (const reference::ToneStretch& part : c.parts)
        for (const float v :
             scenes::sine(Hertz(1000), std::pow(10.0, part.peak_dbfs / 20), Seconds(part.seconds), kRate))
            stereo.insert(stereo.end(), {v, v});
    voice::LoudnessMeter meter({kRate, {ChannelRole::left, ChannelRole::right}});
    meter.add({0, stereo});
    return meter.summary();
}

} // namespace

LoudnessErrors measure_loudness() {
    constexpr double kNoReading = 100;
    LoudnessErrors worst;
    for (const auto& c : reference::kIntegratedCases) {
        const auto l = loudness_of(c).integrated;
        worst.integrated = std::max(worst.integrated, l ? std::abs(l->value() - c.expected) : kNoReading);
    }
    for (const auto& c : reference::kRangeCases) {
        const auto l = loudness_of(c).range;
        worst.range = std::max(worst.range, l ? std::abs(l->value() - c.expected) : kNoReading);
    }
    return worst;
}

} // namespace luft::bench
