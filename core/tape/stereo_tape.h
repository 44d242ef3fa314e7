// The recording's sound in stereo, from any sample.
#pragma once

#include "media/media.h"

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace luft::tape {

class StereoTape {
  public:
    explicit StereoTape(std::unique_ptr<media::PlayableSound> sound) : sound_(std::move(sound)) {}

    [[nodiscard]] SampleRate rate() const { return sound_->format().rate; }

    /// Fills `stereo` with the samples from `from` on; what lies before the start or behind the end is
    /// silence. Throws as SampleSource::read.
    void read(std::int64_t from, std::span<float> stereo);

  private:
    void go_to(std::int64_t sample);
    bool more();

    std::unique_ptr<media::PlayableSound> sound_;
    std::vector<float> ahead_; ///< stereo, read but not handed out
    std::size_t used_ = 0;     ///< of `ahead_`
    std::int64_t next_ = 0;    ///< sample that comes next
    bool ended_ = false;
};

} // namespace luft::tape
