// The second pass over the samples: every measure of the voice that needs its pitch.
#pragma once

#include "base/progress.h"
#include "base/samples.h"
#include "voice/curves.h"
#include "voice/source_fit.h"
#include "voice/texture.h"

namespace luft::voice {

/// Fills level, closure, ring, colour and formant curves where `curves.f0` is sung, and what tract and pulse
/// are fitted to.
void second_pass(SampleSource& source, Setting setting, const Texture& texture, Curves& curves,
                 SourceCurves& source_curves, const Progress& progress);

} // namespace luft::voice
