// Words and numbers as a person reads them. UTF-8 throughout.
#pragma once

#include "base/units.h"

#include <string>
#include <string_view>

namespace luft {

/// Digits after the point, as asked; never "-0". The point is always a full stop.
std::string fixed(double value, int digits);

/// A time as "1:02.3" (minutes, seconds, tenths); from an hour on "1:01:02.3".
std::string clock_text(Seconds t);

/// A time as "00:01:02.345", as WebVTT and others want it; hours take more digits when they must.
std::string timestamp(Seconds t);

/// Note name in scientific pitch notation with the nearest semitone, e.g. "A4", "F#3"; C4 = MIDI 60.
std::string note_name(MidiPitch pitch);

/// How far the pitch lies from that semitone, -50 to +50.
Cents off_semitone(MidiPitch pitch);

/// Text made safe for HTML and XML, in content and in quoted attributes: & < > " ' are replaced and control
/// characters other than tab and line end are dropped.
std::string escape_markup(std::string_view text);

/// True when the bytes are well-formed UTF-8 (RFC 3629).
bool is_utf8(std::string_view text);

/// The text with every malformed sequence replaced by U+FFFD.
std::string valid_utf8(std::string_view text);

/// Words in a text: runs of non-space characters that hold at least one letter or digit.
int count_words(std::string_view text);

/// "1 breath", "2 breaths"; the plural is the noun with an s, or `plural` where it is another.
std::string counted(std::size_t n, std::string_view noun, std::string_view plural = {});

} // namespace luft
