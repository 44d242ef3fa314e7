// How sound reaches the ear: a stream of sample blocks that starts at media time 0 and has no gaps.
#pragma once

#include "base/units.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace luft {

enum class ChannelRole { left, right, centre, low_frequency, surround_left, surround_right, other };

struct AudioFormat {
    SampleRate rate;
    std::vector<ChannelRole> channels; ///< in the order of the interleaved samples
};

/// A stretch of consecutive samples, interleaved by channel, full scale = 1.
struct AudioBlock {
    std::int64_t first = 0;         ///< index of the first sample: its media time is first / rate
    std::span<const float> samples; ///< valid until the next read
};

/// A stream of samples. Sample n stands at media time n / rate exactly: a late start and gaps are delivered
/// as silence, overlaps and everything before time 0 are cut.
class SampleSource {
  public:
    virtual ~SampleSource() = default;

    [[nodiscard]] virtual const AudioFormat& format() const = 0;

    /// The next block; none at the end. Throws Error(unreadable) when the data is broken beyond going on.
    [[nodiscard]] virtual std::optional<AudioBlock> read() = 0;

    /// Starts again at time 0.
    virtual void rewind() = 0;

    /// The length as the file claims it, for progress; none when it doesn't say.
    [[nodiscard]] virtual std::optional<Seconds> expected_duration() const = 0;
};

} // namespace luft
