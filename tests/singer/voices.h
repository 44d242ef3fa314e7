// Who sings: voice types with their vowels, and what makes one singer differ from another.
#pragma once

#include "singer/tract.h"

#include <cstdint>
#include <string_view>

namespace luft::singer {

enum class VoiceType { bass, tenor, countertenor, alto, soprano };
enum class Vowel { a, e, i, o, u };

/// Sung vowels after the formant-values appendix of the Csound manual (frequencies and bandwidths; levels
/// follow from the cascade).
Formants sung_formants(VoiceType voice, Vowel vowel);

enum class Speakers { men, women };
/// Spoken vowels after Peterson & Barney 1952 (JASA 24, 175, Table II): F1 to F3 of the IPA sign, one of
/// i ɪ ɛ æ ɑ ɔ ʊ u ʌ ɝ; F4 and F5 at a neutral tube's 3500 and 4500 Hz (women 15 % higher); bandwidths are
/// Klatt's defaults. Throws Error(not_found) for another sign.
Formants spoken_formants(Speakers who, std::string_view ipa);

/// The neutral tube: 17.5 cm, 350 m/s.
Formants neutral_formants();

std::string_view ipa(Vowel vowel);

struct Singer {
    VoiceType voice = VoiceType::tenor;
    double rd_chest = 1.0;      ///< LF shape in chest register (1 = modal; Fant 1995)
    double rd_head = 2.1;       ///< and in head register: rounder pulses, weaker upper partials
    double rd_per_db = 0.015;   ///< how much Rd falls for each dB above `usual_level`
    Decibels usual_level{-20};  ///< RMS of a note sung at level 0 dB, below full scale
    Decibels breathiness{-34};  ///< breath noise in the tone against the tone; head register has 4 dB more
    double jitter = 0.003;      ///< cycle lengths, standard deviation as a share
    double shimmer = 0.02;      ///< cycle strengths, likewise
    Cents wander{3};            ///< slow unrest of pitch, standard deviation
    Decibels breath_level{-28}; ///< breaths against level 0, where a breath doesn't say
    Seconds glide{0.080};       ///< from pitch to pitch in legato
    Hertz tuning{440};          ///< A4 that the singer sings to
    std::uint64_t seed = 1;
};

} // namespace luft::singer
