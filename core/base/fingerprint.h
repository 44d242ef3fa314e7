// The fingerprint by which a media file is known again when it has moved, and told apart when it has changed.
#pragma once

#include "base/bytes.h"
#include "base/progress.h"

#include <string>

namespace luft {

/// SHA-256 (FIPS 180-4) over all bytes, as 64 lower-case hex digits.
std::string fingerprint(ByteSource& bytes, const Progress& progress = {});

} // namespace luft
