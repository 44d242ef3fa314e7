#include "project/curve_columns.h"

#include <algorithm>
#include <bit>
#include <cstdint>

namespace luft::project {

std::vector<std::byte> to_column(std::span<const float> values) {
    std::vector<std::byte> bytes;
    bytes.reserve(values.size() * sizeof(float));
    for (const float value : values) {
        const auto bits = std::bit_cast<std::uint32_t>(value);
        for (int shift = 0; shift < 32; shift += 8)
            bytes.push_back(static_cast<std::byte>(bits >> shift & 0xff));
    }
    return bytes;
}

std::vector<float> from_column(std::span<const std::byte> bytes) {
    std::vector<float> values(bytes.size() / sizeof(float));
    if constexpr (std::endian::native == std::endian::little) {
        std::ranges::copy(bytes.first(values.size() * sizeof(float)),
                          std::as_writable_bytes(std::span(values)).begin());
    } else {
        for (std::size_t i = 0; i < values.size(); ++i) {
            std::uint32_t bits = 0;
            for (std::size_t b = 0; b < sizeof(float); ++b)
                bits |= std::to_integer<std::uint32_t>(bytes[i * sizeof(float) + b]) << (8 * b);
            values[i] = std::bit_cast<float>(bits);
        }
    }
    return values;
}

} // namespace luft::project
