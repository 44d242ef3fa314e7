// Sound in memory as the stream that the ear reads.
#pragma once

#include "base/samples.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace luft::singer {

/// Mono or stereo samples (interleaved, full scale = 1) handed out in blocks of 4096 frames.
class MemorySource final : public SampleSource {
  public:
    MemorySource(std::vector<float> samples, SampleRate rate, int channels = 1)
        : samples_(std::move(samples)) {
        using enum ChannelRole;
        format_.rate = rate;
        format_.channels = channels == 2 ? std::vector{left, right} : std::vector{centre};
    }

    [[nodiscard]] const AudioFormat& format() const override { return format_; }
    [[nodiscard]] std::optional<AudioBlock> read() override {
        const std::size_t wide = format_.channels.size(), all = samples_.size() / wide;
        if (next_ >= all) return std::nullopt;
        const std::size_t count = std::min<std::size_t>(4096, all - next_);
        const AudioBlock block{static_cast<std::int64_t>(next_),
                               std::span<const float>(samples_).subspan(next_ * wide, count * wide)};
        next_ += count;
        return block;
    }
    void rewind() override { next_ = 0; }
    [[nodiscard]] std::optional<Seconds> expected_duration() const override {
        return Seconds(static_cast<double>(samples_.size() / format_.channels.size()) /
                       format_.rate.per_second);
    }

  private:
    AudioFormat format_;
    std::vector<float> samples_;
    std::size_t next_ = 0;
};

} // namespace luft::singer
