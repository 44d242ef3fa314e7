// The truth of a performance as JSON.
#pragma once

#include "make/sound.h"

#include <string>

namespace luft::sample {

/// One object; field names as in the analysis JSON where both say the same thing, so that they can be laid
/// side by side. Curves have one value every 10 ms, null where nobody sings.
std::string truth_json(const Performance& performance, const Sound& sound);

} // namespace luft::sample
