// Recorded talk, laid over the programme as it goes along.
#pragma once

#include "guide/clock.h"
#include "guide/stereo_resampler.h"
#include "guide/voice_files.h"
#include "media/media.h"
#include "script/cue_sheet.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace luft::guide {

/// One file at the programme's rate, sample by sample.
class Voice {
  public:
    /// Throws as media::open_sound.
    Voice(const std::filesystem::path& file, SampleRate rate);

    /// Adds its next samples; nothing behind its end.
    void add_to(std::span<float> stereo, std::int64_t position, std::int64_t length, std::int64_t ramp);

  private:
    bool more();

    std::unique_ptr<SampleSource> sound_;
    StereoResampler converter_;
    std::vector<float> ahead_; ///< stereo, not handed out yet
    bool ended_ = false;
};

/// Every talk and aside of a programme whose recorded voice is used.
class VoiceOver {
  public:
    VoiceOver(const VoiceFiles& files, const script::CueSheet& sheet, const Clock& clock);

    /// Lays over what begins at that sample of the programme; called from its start to its end in order.
    void lay_over(std::span<float> stereo, std::int64_t first);

  private:
    struct Place {
        std::int64_t from = 0, to = 0;
        std::filesystem::path file;
    };

    std::vector<Place> places_; ///< in order
    std::size_t next_ = 0;
    std::optional<Voice> voice_; ///< of places_[next_], once it has begun
    SampleRate rate_;
    std::int64_t ramp_ = 0;
};

} // namespace luft::guide
