// Numbers and lists as a teacher would say them.
#pragma once

#include "profile/profile.h"

#include <string>
#include <vector>

namespace luft::profile {

/// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& parts);

/// "1 note", "2 notes"; the plural is given where it isn't just an s.
std::string counted(int n, const std::string& one, const std::string& many = {});

/// "62 %" for 0.62; never "0 %" of something that occurs, nor "100 %" of what isn't all: "under 1 %", "over
/// 99 %".
std::string percent(double share);

/// A length of time in words: "4.2 s", from a minute on "1 min 12 s".
std::string length_text(Seconds t);

/// Times of the first few spans: "0:12.3, 0:34.0, 1:02.5 and 4 more".
std::string times(const std::vector<Span>& spans, std::size_t most = 4);

/// "12 cents sharp", "3 cents flat", "dead on pitch".
std::string off_pitch(Cents cents);

/// First letter as a capital (ASCII only; others are left as they are).
std::string capital(std::string text);

/// A value of a measure with as many digits as it is good for; a pitch (unit "MIDI") as its note's name.
std::string figure_text(const Measure& measure, double value);

inline constexpr const char* kThirdNames[3] = {"low", "middle", "high"};

} // namespace luft::profile
