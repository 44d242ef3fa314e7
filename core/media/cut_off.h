// Has a file lost its end?
#pragma once

#include "base/bytes.h"
#include "base/units.h"

#include <memory>
#include <optional>

namespace luft::media {

/// A file that stops before the end that its own header announces.
struct CutOff {
    Seconds announced; ///< end of the recording by the header, on the media time line
    Seconds ends;      ///< end of what is there
};

/// None when the file is whole, and when its kind doesn't announce a length (Ogg, AVI, bare AAC, MPEG
/// streams): then nothing shows what is missing. More than a second must be missing, or a thousandth of a
/// long recording: headers round. A whole file costs a look at its last second; one that was cut off, a walk
/// over its packets. Throws as Container.
std::optional<CutOff> find_cut_off(const std::shared_ptr<ByteSource>& bytes);

} // namespace luft::media
