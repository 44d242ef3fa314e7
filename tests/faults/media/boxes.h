// The boxes of an MP4 or MOV file (ISO/IEC 14496-12, 4.2), found without FFmpeg.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace luft::test {

struct Box {
    std::string kind; ///< "moov"
    std::size_t at = 0, size = 0;
    std::size_t depth = 0;
};

/// All boxes, in order of their start, those within others included.
std::vector<Box> boxes_of(const std::string& bytes);

} // namespace luft::test
