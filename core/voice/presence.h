// Whether somebody sings at all among instruments: a second look over seconds instead of tenths.
#pragma once

#include "base/progress.h"
#include "voice/first_pass.h"

#include <array>
#include <span>
#include <vector>

namespace luft::voice {

/// What tells a sung frame, along the likeliest pitch line through the whole recording. 'Odds' are the log
/// odds that voice_likeness gives to the frame's candidates together, within +-8; 'sure' is how far they lie
/// over the recording's own threshold, 0 to 1 (Otsu 1979 on the line's odds); +-n are means over n frames to
/// either side.
/// -  0 constant 1
/// -  1 odds; 2 threshold; 3 to 6 odds +-5, +-20, +-60, +-200
/// -  7, 8 odds' 10th and 90th percentile, 9 mean 'sure', all of the whole recording
/// - 10 to 12 'sure' +-20, +-60, +-200; 13 'sure'
/// - 14 to 16 leaps of the line, over 0.9 semitones, +-10, +-40, +-150: it wanders where nobody leads it
/// - 17 level of the line's partials against the recording's loud frames, dB; 18, 19 the same +-10, +-60
/// - 20, 21 level and odds of the 15 frames from here on, less those of the 15 before
/// - 22, 23 tonality (Texture::tonality) and the same +-40, dB
/// - 24, 25 what lies over 4.5 kHz against all and the same +-40, dB: sibilants, breaths, drums
/// - 26 to 29 odds of the 40 frames before, of the 40 from here on, the lower and the higher of the two
/// - 30, 31 spread of the line within +-60 and +-200, octaves
/// - 32, 33 how far the line lies off its mean in the whole recording, octaves; the same with its sign
inline constexpr std::size_t kPresenceFeatures = 34;
using PresenceFeatures = std::array<float, kPresenceFeatures>;

/// One a frame. `odds` are voice_likeness's.
std::vector<PresenceFeatures> presence_features(const FirstPass& pass, std::span<const float> odds,
                                                const Progress& progress = {});

/// Log odds that somebody sings: a network with one hidden layer of six (weights in presence_weights.cpp).
double presence(const PresenceFeatures& features);

/// `odds` of voice_likeness, moved frame by frame so that together they say what `presence` says. The order
/// among the candidates of a frame stays.
std::vector<float> voice_presence(const FirstPass& pass, std::vector<float> odds,
                                  const Progress& progress = {});

} // namespace luft::voice
