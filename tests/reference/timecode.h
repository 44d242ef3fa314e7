// Timecode by SMPTE ST 12-1, counted label by label; and published values of it.
#pragma once

#include <array>
#include <cstdint>
#include <cstdio>
#include <string>
#include <unordered_map>

namespace luft::reference {

/// Drop-frame and plain labels of a frame at 30000/1001. Drop-frame: frames 1800 and 1078920 as in public
/// tests of drop-frame converters; 10790, 17981 to 17983, 107892 and 1084319 as in OpenTimelineIO's opentime
/// tests; the others follow from the rule (labels 00 and 01 are left out each minute but every tenth).
struct TimecodeRow {
    std::int64_t frame;
    const char* drop;
    const char* plain;
};
inline constexpr std::array<TimecodeRow, 13> kTimecodes{{
    {0, "00:00:00;00", "00:00:00:00"},
    {1799, "00:00:59;29", "00:00:59:29"},
    {1800, "00:01:00;02", "00:01:00:00"},
    {3598, "00:02:00;02", "00:01:59:28"},
    {10789, "00:05:59;29", "00:05:59:19"},
    {10790, "00:06:00;02", "00:05:59:20"},
    {17981, "00:09:59;29", "00:09:59:11"},
    {17982, "00:10:00;00", "00:09:59:12"},
    {17983, "00:10:00;01", "00:09:59:13"},
    {107892, "01:00:00;00", "00:59:56:12"},
    {1078920, "10:00:00;00", "09:59:24:00"},
    {1084319, "10:03:00;05", "10:02:23:29"},
    {2589407, "23:59:59;29", "23:58:33:17"},
}};

/// A counter as a clock has one: each frame adds one, and carries. It knows no arithmetic of whole hours.
class FrameCounter {
  public:
    /// `base` labels a second; `dropped` of them left out where the rule asks (2 at 29.97, 4 at 59.94; 0 for
    /// plain counting).
    FrameCounter(int base, int dropped) : base_(base), dropped_(dropped) {}

    void next() {
        if (++frames_ < base_) return;
        frames_ = 0;
        if (++seconds_ < 60) return;
        seconds_ = 0;
        if (++minutes_ == 60) {
            minutes_ = 0;
            ++hours_;
        }
        if (minutes_ % 10 != 0) frames_ = dropped_;
    }
    [[nodiscard]] std::string label() const {
        std::array<char, 64> text{};
        std::snprintf(text.data(), text.size(), "%02d:%02d:%02d%c%02d", hours_, minutes_, seconds_,
                      dropped_ > 0 ? ';' : ':', frames_);
        return text.data();
    }

  private:
    int base_, dropped_;
    int hours_ = 0, minutes_ = 0, seconds_ = 0, frames_ = 0;
};

/// The frame of every label up to `frames`.
inline std::unordered_map<std::string, std::int64_t> labels(int base, int dropped, std::int64_t frames) {
    std::unordered_map<std::string, std::int64_t> all;
    FrameCounter counter(base, dropped);
    for (std::int64_t f = 0; f <= frames; ++f, counter.next())
        all[counter.label()] = f;
    return all;
}

} // namespace luft::reference
