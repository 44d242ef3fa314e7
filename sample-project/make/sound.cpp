#include "make/sound.h"

#include "singer/render.h"

#include <algorithm>
#include <cmath>

namespace luft::sample {
namespace {

using namespace luft::singer;

/// Silence around the music.
constexpr Seconds kTail{1.2};

void raise(Truth& truth, Decibels by) {
    for (float& v : truth.level.raw())
        v += static_cast<float>(by.value()); // none stays none
    for (TrueNote& n : truth.notes)
        n.level += by;
    for (TrueBreath& b : truth.breaths)
        b.level += by;
}

std::vector<Decibels> levels_at_breaths(const Truth& truth, const std::vector<float>& mixed,
                                        const Stereo& voice) {
    std::vector<Decibels> out;
    for (const TrueBreath& b : truth.breaths) {
        const auto from = static_cast<std::size_t>(b.span.start.value() * kRate.per_second);
        const auto to = static_cast<std::size_t>(b.span.end.value() * kRate.per_second);
        double power = 0;
        for (std::size_t n = from; n < to; ++n) {
            const double l = double(mixed[2 * n]) - double(voice.left[n]);
            const double r = double(mixed[2 * n + 1]) - double(voice.right[n]);
            power += (l * l + r * r) / 2;
        }
        out.push_back(power_level(power / std::max<double>(1, double(to - from))));
    }
    return out;
}

} // namespace

Sound sound_of(const Performance& p) {
    Rendition sung = render(p.song, p.singer, kRate);
    const auto progression = chords(p.frame);
    double beats = 0;
    for (const Chord& c : progression)
        beats += c.beats;
    const Seconds length = p.frame.beat * beats + kTail;
    const auto samples = static_cast<std::size_t>(std::llround(length.value() * kRate.per_second));
    sung.samples.resize(samples);

    Room right = p.room;
    right.seed += 1;
    const Stereo voice{in_room(sung.samples, kRate, p.room), in_room(sung.samples, kRate, right)};
    const Stereo band = play(accompany(progression, p.band), length, kRate, p.singer.seed + 1000);

    Sound out;
    out.samples = mix(voice, band, p.voice_over_band, kRate);
    out.truth = std::move(sung.truth);
    out.band_level = levels_at_breaths(out.truth, out.samples, voice);
    float peak = 0;
    for (const float v : out.samples)
        peak = std::max(peak, std::abs(v));
    constexpr Decibels kPeak{-3}; // leaves the sound encoder room to overshoot
    const Decibels gain = kPeak - amplitude_level(peak);
    const auto k = static_cast<float>(amplitude_of(gain));
    for (float& v : out.samples)
        v *= k;
    for (Decibels& d : out.band_level)
        d += gain;
    raise(out.truth, gain);
    return out;
}

} // namespace luft::sample
