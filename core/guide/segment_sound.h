// The recording's part in the sound of one segment.
#pragma once

#include "guide/clock.h"
#include "guide/duck.h"
#include "script/cue_sheet.h"
#include "signal/stretch.h"
#include "tape/stereo_resampler.h"
#include "tape/stereo_tape.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace luft::guide {

class SegmentSound {
  public:
    /// Tape and segment must outlive it. The tape may be of another rate than the programme.
    SegmentSound(tape::StereoTape& tape, const script::CueSheet& sheet, const script::Segment& segment,
                 const Clock& clock);

    /// The next samples: silence in a talk; the recording elsewhere, ducked under asides, its edges faded.
    void next(std::span<float> stereo);

  private:
    void made(std::span<float> stereo);

    tape::StereoTape* tape_;
    Duck duck_;
    bool silent_ = false;
    std::optional<tape::StereoResampler> converter_; ///< none where the rates agree
    std::optional<signal::Stretcher>
        stretcher_;           ///< a new one each time: it keeps its place only at one speed
    std::vector<float> made_; ///< by those two, not handed out yet
    std::int64_t first_ = 0;  ///< in the programme
    std::int64_t length_ = 0;
    std::int64_t done_ = 0;
    std::int64_t media_ = 0; ///< the tape's sample that is read next
    std::int64_t ramp_ = 0;
};

} // namespace luft::guide
