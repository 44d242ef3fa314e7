// How sure it is that a noise is a breath: by what breaths are like, then by what this singer's are like.
#pragma once

#include "marks/breath_events.h"

#include <optional>

namespace luft::marks {

/// The logit of the probability that the event is a breath, from the event alone. What counts against it:
/// bulk over 4.5 kHz as in [s] and [f], between 2 and 4.5 kHz as in [sh] and whispered vowels (hush), a hole
/// in the spectrum between 800 Hz and 4.5 kHz, where breaths are filled by weak peaks like those of a schwa
/// (Werner et al. 2023), a low end as hum and murmurs have, partials (a voice or its tail in the room), no
/// swell (tails only fall), no drop before the tone (the air of a breathy start runs into it), a long wait
/// until the tone, a level near the singing's. After Ruinskiy & Lavner 2007 and Nakano et al. 2008, who use
/// spectral shape, level and length. Weights: logistic regression on 962 events of 150 songs of the project's
/// singer (seeds 1000 to 1049 and 1500 to 1599; dry, with noise and hum, in rooms, with and without breaths,
/// through unlike microphones), held near set weights so that what that singer never does still counts.
double breath_logit(const NoiseEvent& event, const Gap& gap);

/// What the sure breaths of a recording have in common.
struct BreathManner {
    NoiseShape shape{}; ///< dB against its own mean
    double below = 0;   ///< dB under the singing
};

/// The middle of these breaths; none under three of them.
std::optional<BreathManner> manner_of(std::span<const NoiseEvent> sure);

/// Added to the logit of an event: up to 1 when it sounds like the singer's other breaths, down to -4 when
/// its spectrum or level is unlike theirs. Own rule; limits set so
/// that the breaths of the project's singer (nearly all within 3 dB RMS over the bands and 10 dB in level of
/// their middle) and those of five songs by one recorded singer (within 7 and 13 dB) keep their place.
double likeness(const NoiseEvent& event, const BreathManner& manner);

/// The sum of both as the logit of a probability that holds, scaled and moved as Platt 1999 does. Set by hand
/// on 160 songs of the project's singer (seeds 1500 to 1599, which the weights saw too, and 1700 to 1759):
/// sums of 0 to 0.85 were breaths in 3 of 16 cases, higher ones in 528 of 528. Other singers are less alike.
double calibrated(double sum);

} // namespace luft::marks
