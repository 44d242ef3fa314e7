// A small writer of Matroska with one sound track of 16-bit samples (RFC 9559), each block as it is told.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace luft::test {

struct Block {
    std::uint64_t cluster_ms = 0; ///< time of its cluster, any number
    std::int16_t after_ms = 0;
    std::string samples;
};

/// `ticks_ns`: length of a tick, usually a million.
std::string matroska(const std::vector<Block>& blocks, double rate = 8000,
                     std::uint64_t ticks_ns = 1'000'000);

} // namespace luft::test
