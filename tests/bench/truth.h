// What the project's own singer knows of its song, as a scene's truth, and as the answer of a perfect ear.
#pragma once

#include "bench/scene.h"
#include "marks/listen.h"
#include "singer/truth.h"

#include <span>

namespace luft::bench {

Truth truth_of(const singer::Truth& sung);

/// Sets `audible` of each breath: within 6 dB of everything else that sounds in its span, or above it. Both
/// are measured over the difference of neighbouring samples, which weighs the highs where breaths have their
/// sound. Own rule, no source. `voice` is the voice by itself as loud as in the mix, `mix` the sum; both of
/// one channel.
void find_audible(std::vector<TrueBreath>& breaths, std::span<const float> voice, std::span<const float> mix,
                  SampleRate rate);

/// Stretches of 3 s and more without singing, half a second clear of it.
std::vector<Span> instrumental_stretches(const std::vector<Span>& phrases, Seconds length);

/// The truth fed back as an answer; it must score perfectly.
marks::Analysis answer_of(const Truth& truth, Seconds length);

} // namespace luft::bench
