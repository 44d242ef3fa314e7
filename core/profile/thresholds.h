// Borders that more than one file of the profile goes by. Each says where it comes from.
#pragma once

#include "profile/material.h"

namespace luft::profile {

/// Melodic intervals 20 to 25 cents out still pass as in tune with expert listeners: Vurma & Ross 2006, Music
/// Perception 23(4) 331-344. From here on a note is called sharp or flat.
inline constexpr Cents kHeardAsOff{25};
/// Shorter notes say too little about pitch (no source).
inline constexpr Seconds kLeastForPitch{0.12};
/// From this length on a note is called held: long enough to drift or grow (common practice, no source).
inline constexpr Seconds kHeldNote{0.4};
/// From this length on a note has room for three cycles of vibrato at 5 Hz.
inline constexpr Seconds kRoomForVibrato{0.6};
/// A held note that moves further than this drifts (a little over kHeardAsOff; no source).
inline constexpr Cents kDrifting{30};
/// A start from further below than this is called a scoop (no source).
inline constexpr Cents kScooped{40};

/// Whole swings of 0.6 to 2 semitones, so half-extents of 30 to 100 cents, are the older survey's range for
/// singers: Timmers & Desain 2000, after Seashore 1938, Sundberg 1987 and Meyer 1992.
inline constexpr Cents kNarrowVibrato{30};
inline constexpr Cents kWideVibrato{100};
/// 5 to 7 Hz is usual in Western classical singing; other styles differ (Peking opera about 3.5 Hz: Sundberg
/// et al. 2012). The same survey gives 5.5 to 8 Hz.
inline constexpr Hertz kSlowVibrato{5};
inline constexpr Hertz kFastVibrato{7};
/// Regularity from which on a vibrato is called even (no source; the scale is our own).
inline constexpr double kEvenVibrato = 0.7;

/// A phrase of this length is a long line (common practice, no source).
inline constexpr Seconds kLongLine{6};
/// Softer or louder than the performance's own middle by this much is called soft or loud (no source).
inline constexpr Decibels kLouder{5};
/// The last note of a phrase this far under the rest of it is called fading (no source).
inline constexpr Decibels kFadingEnd{6};

inline bool long_enough_for_pitch(const SungNote& n) {
    return n.length() >= kLeastForPitch;
}

} // namespace luft::profile
