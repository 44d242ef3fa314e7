// Writing down the truth of a rendition.
#pragma once

#include "singer/control.h"
#include "singer/truth.h"

#include <span>

namespace luft::singer {

/// `voice` is the sung sound alone, before breaths and consonants are added to it.
Truth truth_of(const Layout& layout, const Singer& singer, const std::vector<Control>& controls,
               std::span<const float> voice, SampleRate rate);

} // namespace luft::singer
