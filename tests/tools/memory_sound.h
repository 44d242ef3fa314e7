// Sound in memory that can be heard from any place.
#pragma once

#include "media/media.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace luft::test {

/// Interleaved samples, in blocks of a length that divides nothing.
class MemorySound final : public media::PlayableSound {
  public:
    MemorySound(std::vector<float> samples, SampleRate rate, int channels = 1)
        : samples_(std::move(samples)) {
        using enum ChannelRole;
        format_ = {rate, channels == 2 ? std::vector{left, right} : std::vector{centre}};
    }

    [[nodiscard]] const AudioFormat& format() const override { return format_; }
    [[nodiscard]] std::optional<AudioBlock> read() override {
        const std::size_t wide = format_.channels.size(), all = samples_.size() / wide;
        if (next_ >= all) return std::nullopt;
        const std::size_t first = next_, count = std::min<std::size_t>(1777, all - first);
        next_ += count;
        handed_ += count;
        return AudioBlock{static_cast<std::int64_t>(first),
                          std::span<const float>(samples_).subspan(first * wide, count * wide)};
    }
    void rewind() override { next_ = 0; }
    void go_to(std::int64_t sample) override {
        next_ = static_cast<std::size_t>(std::max<std::int64_t>(sample, 0));
    }
    [[nodiscard]] std::optional<Seconds> expected_duration() const override {
        return Seconds(static_cast<double>(samples_.size() / format_.channels.size()) /
                       format_.rate.per_second);
    }

    /// Frames handed out in all.
    [[nodiscard]] std::size_t handed() const { return handed_; }

  private:
    AudioFormat format_;
    std::vector<float> samples_;
    std::size_t next_ = 0, handed_ = 0;
};

} // namespace luft::test
