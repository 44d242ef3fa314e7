// Decoded sound of any sample type, rate and layout as interleaved floats of one rate and layout.
#pragma once

#include "base/units.h"
#include "media/handles.h"

#include <cstdint>
#include <span>
#include <vector>

namespace luft::media {

class SampleConverter {
  public:
    SampleConverter(Layout layout, SampleRate rate) : layout_(std::move(layout)), rate_(rate) {}

    /// The frame's samples, valid until the next call. Where the frame has another rate or layout than asked
    /// for, it is resampled or mixed. Numbers that are none (NaN, infinity) become 0.
    std::span<const float> convert(const AVFrame& frame);

    /// What is still inside when the sound has ended.
    std::span<const float> rest();

    /// Samples (at the asked rate) that come before those of the next frame: above 0 only while resampling.
    [[nodiscard]] std::int64_t waiting() const;

  private:
    void prepare(const AVFrame& frame);
    void run(const std::uint8_t** in, int count);

    Layout layout_;
    SampleRate rate_;
    Resampler swr_;
    Layout in_layout_; ///< what swr_ was made for, likewise the next two
    int in_rate_ = 0;
    int in_format_ = AV_SAMPLE_FMT_NONE;
    std::vector<float> out_;
};

} // namespace luft::media
