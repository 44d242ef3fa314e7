#include "bench/aubio.h"

namespace luft::bench {
namespace {

constexpr std::array kMethods{"yinfft", "yinfast", "mcomb", "fcomb", "specacf"};
constexpr int kMostShift = 5;

} // namespace

AubioTrackers::AubioTrackers() {
    for (const char* method : kMethods)
        trackers_.push_back(std::make_unique<reference::AubioPitch>(method));
}

Trackers AubioTrackers::track(const Scene& scene) {
    Trackers out;
    if (!scene.truth.pitch || scene.rate != SampleRate{44100}) return out;
    std::vector<float> middle(scene.samples.size() / static_cast<std::size_t>(scene.channels));
    for (std::size_t i = 0; i < middle.size(); ++i)
        middle[i] =
            scene.channels == 1 ? scene.samples[i] : (scene.samples[2 * i] + scene.samples[2 * i + 1]) / 2;
    const auto& [hz, known] = *scene.truth.pitch;
    for (std::size_t m = 0; m < trackers_.size(); ++m) {
        const Curve<Hertz> said = trackers_[m]->track(middle);
        for (int shift = 0; shift <= kMostShift; ++shift) {
            auto& tally = out[std::string(kMethods[m]) + "+" + std::to_string(shift)];
            for (std::size_t i = 0; i < hz.size(); ++i) {
                if (!known.empty() && !known[i]) continue;
                const auto at = static_cast<std::int64_t>(i);
                tally.add(hz.at(FrameIndex{at}).value_or(Hertz(0)).value(),
                          said.at(FrameIndex{at + shift}).value_or(Hertz(0)).value());
            }
        }
    }
    return out;
}

Best best_of(const Trackers& trackers) {
    Best best{{}, {}, "–"};
    for (const auto& [name, tally] : trackers) {
        const auto s = tally.score();
        if (s.voiced_frames == 0 || (best.raw_pitch && *best.raw_pitch >= s.raw_pitch)) continue;
        best = {s.raw_pitch, s.raw_chroma, name.substr(0, name.find('+'))};
    }
    return best;
}

} // namespace luft::bench
