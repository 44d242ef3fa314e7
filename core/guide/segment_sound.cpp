#include "guide/segment_sound.h"

#include "guide/fades.h"

#include <algorithm>

namespace luft::guide {
namespace {

constexpr std::size_t kBlock = 2048; // samples of one channel that the stretcher is fed at a time

} // namespace

SegmentSound::SegmentSound(tape::StereoTape& tape, const script::CueSheet& sheet,
                           const script::Segment& segment, const Clock& clock)
    : tape_(&tape), duck_(sheet, segment, clock), silent_(segment.kind == script::SegmentKind::talk),
      first_(clock.sample(segment.programme_start)), length_(clock.sample(segment.programme_end) - first_),
      media_((segment.media_start * Rational(tape.rate().per_second)).round()),
      ramp_(clock.samples_in(kCutFade)) {
    if (!silent_ && tape.rate() != clock.sample_rate()) converter_.emplace(tape.rate(), clock.sample_rate());
    if (!silent_ && segment.speed != Rational(1))
        stretcher_.emplace(clock.sample_rate(), 2, segment.speed.as_double());
}

void SegmentSound::next(std::span<float> stereo) {
    if (silent_) {
        std::ranges::fill(stereo, 0.0F);
    } else if (stretcher_ || converter_) {
        made(stereo);
    } else {
        tape_->read(media_, stereo);
        media_ += static_cast<std::int64_t>(stereo.size() / 2);
    }
    duck_.lower(stereo, first_ + done_);
    fade_edges(stereo, done_, length_, ramp_);
    done_ += static_cast<std::int64_t>(stereo.size() / 2);
}

/// Behind the segment's end the recording is read on: the programme's last frame of it may not be full.
void SegmentSound::made(std::span<float> stereo) {
    std::vector<float> block(2 * kBlock), converted;
    while (made_.size() < stereo.size()) {
        tape_->read(media_, block);
        media_ += static_cast<std::int64_t>(kBlock);
        converted.clear();
        if (converter_) converter_->process(block, converted);
        const std::vector<float>& plain = converter_ ? converted : block;
        if (stretcher_)
            stretcher_->process(plain, made_);
        else
            made_.insert(made_.end(), plain.begin(), plain.end());
    }
    std::copy_n(made_.begin(), stereo.size(), stereo.begin());
    made_.erase(made_.begin(), made_.begin() + static_cast<std::ptrdiff_t>(stereo.size()));
}

} // namespace luft::guide
