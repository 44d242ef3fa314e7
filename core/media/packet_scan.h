// What only a walk over the packets tells: nothing is decoded.
#pragma once

#include "base/units.h"
#include "media/container.h"

#include <optional>

namespace luft::media {

struct PacketScan {
    bool whole = false;         ///< the walk went to the end of the file
    Seconds end;                ///< of the last packet, if whole
    bool variable_rate = false; ///< of the pictures, as far as the walk went
};

/// Walks over the first 600 pictures (20 to 25 s), or to the end of the file when `to_the_end`. The pictures'
/// rate varies when the time from one to the next leaves the median by more than a tenth and two ticks of the
/// clock.
PacketScan scan_packets(Container& container, std::optional<int> pictures, bool to_the_end);

} // namespace luft::media
