#include "compare/harmony.h"

#include "signal/fft.h"
#include "signal/window.h"
#include "voice/front.h"

#include <algorithm>
#include <cmath>

namespace luft::compare {
namespace {

constexpr std::size_t kSize = 8192; // at 24 kHz: bins 2.9 Hz apart, half the distance of semitones at 100 Hz
constexpr Hertz kLowest{55}, kHighest{2000};
constexpr double kCompression = 100; // Müller 2015, section 3.1.2.1
constexpr double kSilent = 1e-6;     // 60 dB under the loudest frame; common practice, no source

class Classes {
  public:
    explicit Classes(Hertz tuning) : fft_(kSize), window_(signal::hann(kSize)), class_(fft_.bins(), -1) {
        for (std::size_t k = 1; k < class_.size(); ++k) {
            const Hertz f(static_cast<double>(k) * voice::kEarRate.per_second / kSize);
            if (f < kLowest || f > kHighest) continue;
            class_[k] = static_cast<int>(((std::lround(pitch_of(f, tuning).value()) % 12) + 12) % 12);
        }
    }

    /// Of the ring's samples, oldest at `oldest`.
    PitchClasses of(const std::vector<float>& ring, std::size_t oldest) {
        const auto samples = fft_.samples();
        for (std::size_t n = 0; n < kSize; ++n)
            samples[n] = ring[(oldest + n) % kSize] * window_[n];
        fft_.forward();
        double total = 0;
        for (std::size_t k = 0; k < class_.size(); ++k)
            if (class_[k] >= 0) total += std::norm(fft_.spectrum()[k]);
        loudest_ = std::max(loudest_, total);
        PitchClasses out{};
        if (total <= kSilent * loudest_ || total <= 0) return out;
        for (std::size_t k = 0; k < class_.size(); ++k)
            if (class_[k] >= 0)
                out[static_cast<std::size_t>(class_[k])] +=
                    static_cast<float>(std::log1p(kCompression * std::norm(fft_.spectrum()[k]) / total));
        float length = 0;
        for (const float v : out)
            length += v * v;
        for (float& v : out)
            v /= std::sqrt(length);
        return out;
    }

  private:
    signal::RealFft fft_;
    std::vector<float> window_;
    std::vector<int> class_; ///< of each bin; -1 outside the range
    double loudest_ = 0;
};

} // namespace

Harmony hear_harmony(SampleSource& source, Hertz tuning, const Progress& progress) {
    constexpr auto kEvery = static_cast<std::int64_t>(10); // hops of 10 ms to a column
    constexpr std::int64_t kAhead = kSize / 2 / voice::kHopSamples;
    voice::Front front(source);
    Classes classes(tuning);
    std::vector<float> ring(kSize, 0.0F);
    std::size_t next = 0;
    std::int64_t hops = 0;
    Harmony out;
    const auto take = [&](std::span<const float> hop) {
        for (const float x : hop) {
            ring[next] = x;
            next = (next + 1) % kSize;
        }
        // The column at i x 10 hops is due when half a frame lies behind it.
        const std::int64_t centre = ++hops - kAhead;
        if (centre >= 0 && centre % kEvery == 0) out.columns.push_back(classes.of(ring, next));
    };
    const auto expected = source.expected_duration();
    while (const auto frame = front.next()) {
        take(frame->hop);
        if (hops % 1000 == 0)
            progress.step(expected ? std::min(1.0, time_of({hops}) / *expected) : 0,
                          "listening to the harmony");
    }
    const std::vector<float> silence(voice::kHopSamples, 0.0F);
    for (std::int64_t i = 0; i < kAhead; ++i)
        take(silence);
    return out;
}

} // namespace luft::compare
