// Recorded talk, laid over the programme as it goes along.
#pragma once

#include "guide/clock.h"
#include "guide/voice_files.h"
#include "media/media.h"
#include "script/cue_sheet.h"
#include "tape/stereo_resampler.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace luft::guide {

/// One file at the programme's rate, sample by sample. Throws no Error: what can't be read is silence.
class Voice {
  public:
    Voice(VoiceFile file, SampleRate rate);

    /// Adds its next samples; nothing behind its end.
    void add_to(std::span<float> stereo, std::int64_t position, std::int64_t length, std::int64_t ramp);

    /// What couldn't be read so far, and why: a sentence; empty when all could.
    [[nodiscard]] std::string fault() const;

  private:
    bool more();
    [[nodiscard]] Seconds length() const;

    VoiceFile file_;
    std::unique_ptr<SampleSource> sound_;            ///< none when the file can't be opened
    std::optional<tape::StereoResampler> converter_; ///< likewise
    std::vector<float> ahead_;                       ///< stereo, not handed out yet
    std::int64_t read_ = 0;                          ///< samples of the file, of one channel
    std::string broken_;                             ///< why it ended too early
    bool ended_ = false;
};

/// Every talk and aside of a programme whose recorded voice is used.
class VoiceOver {
  public:
    VoiceOver(const VoiceFiles& files, const script::CueSheet& sheet, const Clock& clock);

    /// Lays over what begins at that sample of the programme; called from its start to its end in order.
    void lay_over(std::span<float> stereo, std::int64_t first);
    /// Of the voices that have been laid over: a sentence each on what couldn't be read.
    [[nodiscard]] const std::vector<std::string>& faults() const { return faults_; }

  private:
    struct Place {
        std::int64_t from = 0, to = 0;
        VoiceFile file;
    };

    std::vector<Place> places_; ///< in order
    std::size_t next_ = 0;
    std::optional<Voice> voice_; ///< of places_[next_], once it has begun
    std::vector<std::string> faults_;
    SampleRate rate_;
    std::int64_t ramp_ = 0;
};

} // namespace luft::guide
