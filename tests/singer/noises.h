// Sounds without a pitch: breaths and unvoiced consonants.
#pragma once

#include "singer/random.h"
#include "singer/song.h"

#include <vector>

namespace luft::singer {

/// A breath in: noise through the neutral tube (500, 1500, 2500 Hz with wide bandwidths, since the glottis is
/// open), which is where inhalations have their weak peaks (Werner et al. 2023); grows, peaks at two thirds
/// and stops faster than it came. `rms` over the whole length.
std::vector<float> breath_noise(Seconds length, double rms, SampleRate rate, Random random);

/// Length of a consonant before its vowel. Common practice, no source.
Seconds length_of(Consonant c);
[[nodiscard]] constexpr bool is_voiced(Consonant c) {
    return c == Consonant::m || c == Consonant::n || c == Consonant::l;
}

/// Level of an unvoiced consonant against a sung note. Common practice, no source.
Decibels level_of(Consonant c);

/// An unvoiced consonant other than h (which goes through the vowel's own tract): hisses are noise through
/// one or two broad resonances above (s 6.5 kHz, sh 3 kHz, f flat), t and k a closure and a burst.
std::vector<float> consonant_noise(Consonant c, double rms, SampleRate rate, Random random);

/// Formants of a hum (m, n) or l: a murmur near 270 Hz and weak upper resonances (after Klatt 1980, table of
/// consonants).
Formants murmur(Consonant c);

} // namespace luft::singer
