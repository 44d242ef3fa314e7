// Numbers as file formats hold them.
#pragma once

#include <cstdint>
#include <string>

namespace luft::test {

/// The lowest `count` bytes of a number, highest first.
inline std::string big(std::uint64_t value, int count) {
    std::string bytes;
    for (int i = count - 1; i >= 0; --i)
        bytes += static_cast<char>(value >> (8 * i) & 0xFF);
    return bytes;
}

/// The same, lowest first.
inline std::string little(std::uint64_t value, int count) {
    const std::string bytes = big(value, count);
    return {bytes.rbegin(), bytes.rend()};
}

inline std::uint64_t big_at(const std::string& bytes, std::size_t at, int count) {
    std::uint64_t value = 0;
    for (int i = 0; i < count; ++i)
        value = value << 8 | static_cast<unsigned char>(bytes.at(at + static_cast<std::size_t>(i)));
    return value;
}

} // namespace luft::test
