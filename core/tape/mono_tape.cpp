#include "tape/mono_tape.h"

#include <algorithm>
#include <numeric>

namespace luft::tape {
namespace {

constexpr std::size_t kPull = 2048; // samples of the tape at a time

/// So much is read before a place and so far forward is read on: the resampler's filter reaches some
/// milliseconds back. Own value.
constexpr Seconds kRunUp{0.05}, kNear{1};

std::int64_t samples(Seconds t, SampleRate rate) {
    return static_cast<std::int64_t>(t.value() * rate.per_second);
}

} // namespace

MonoTape::MonoTape(std::unique_ptr<media::PlayableSound> sound, SampleRate rate)
    : tape_(std::move(sound)), rate_(rate) {
    if (rate_ != tape_.rate()) resampler_.emplace(tape_.rate(), rate_);
}

void MonoTape::read(std::int64_t from, std::span<float> mono) {
    const auto end = [&] { return first_ + static_cast<std::int64_t>(ready_.size()); };
    if (from < first_ || from > end() + samples(kNear, rate_)) go_to(from);
    const std::int64_t to = from + static_cast<std::int64_t>(mono.size());
    while (end() < to) {
        if (end() < from) {
            first_ = end();
            ready_.clear();
        }
        pull();
    }
    std::copy_n(ready_.begin() + static_cast<std::ptrdiff_t>(from - first_), mono.size(), mono.begin());
    ready_.erase(ready_.begin(), ready_.begin() + static_cast<std::ptrdiff_t>(to - first_));
    first_ = to;
}

/// Begins where a sample of the tape and one of ours stand at the same time.
void MonoTape::go_to(std::int64_t sample) {
    const std::int64_t from = tape_.rate().per_second, to = rate_.per_second, common = std::gcd(from, to);
    // Of ours, from one such place to the next; no rate is 0.
    const std::int64_t step = std::max<std::int64_t>(to / common, 1);
    std::int64_t turn = (sample - samples(kRunUp, rate_)) / step;
    if (turn * step > sample - samples(kRunUp, rate_)) --turn; // below 0
    ready_.clear();
    first_ = turn * step;
    source_ = turn * (from / common);
    if (resampler_) resampler_.emplace(tape_.rate(), rate_);
}

void MonoTape::pull() {
    std::vector<float> stereo(2 * kPull), mono(kPull);
    tape_.read(source_, stereo);
    source_ += static_cast<std::int64_t>(kPull);
    for (std::size_t i = 0; i < kPull; ++i)
        mono[i] = (stereo[2 * i] + stereo[2 * i + 1]) / 2;
    if (resampler_)
        resampler_->process(mono, ready_);
    else
        ready_.insert(ready_.end(), mono.begin(), mono.end());
}

} // namespace luft::tape
