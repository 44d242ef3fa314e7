// The sound of bytes that others read as well.
#pragma once

#include "base/bytes.h"
#include "base/samples.h"

#include <memory>

namespace luft::media {

/// As open_sound.
std::unique_ptr<SampleSource> sound_of(std::shared_ptr<ByteSource> bytes);

} // namespace luft::media
