#include "project/stored_record.h"

#include <array>
#include <bit>

namespace luft::project {
namespace {

/// How many bytes a value of that type takes, by the table of section 2.1; none for the two reserved types.
std::optional<std::size_t> size_of(std::uint64_t type) {
    constexpr std::array<std::size_t, 10> kSizes = {0, 1, 2, 3, 4, 6, 8, 8, 0, 0};
    if (type < kSizes.size()) return kSizes.at(type);
    if (type < 12) return std::nullopt;
    return (type - 12) / 2;
}

std::int64_t signed_number(std::span<const std::byte> bytes) {
    const std::uint64_t raw = big_endian(bytes, 0, bytes.size());
    const unsigned unused = 64 - 8 * static_cast<unsigned>(bytes.size());
    return static_cast<std::int64_t>(raw << unused) >> unused;
}

StoredValue value_of(std::uint64_t type, std::span<const std::byte> bytes) {
    if (type == 0) return nullptr;
    if (type == 7) return std::bit_cast<double>(big_endian(bytes, 0, 8));
    if (type == 8 || type == 9) return static_cast<std::int64_t>(type - 8);
    if (type < 7) return signed_number(bytes);
    if (type % 2 == 0) return std::vector<std::byte>(bytes.begin(), bytes.end());
    return std::string(reinterpret_cast<const char*>(bytes.data()), bytes.size());
}

} // namespace

std::uint64_t big_endian(std::span<const std::byte> bytes, std::size_t offset, std::size_t size) {
    std::uint64_t value = 0;
    for (std::size_t i = offset; i < offset + size; ++i)
        value = (value << 8) | (i < bytes.size() ? static_cast<std::uint64_t>(bytes[i]) : 0);
    return value;
}

std::optional<std::uint64_t> read_varint(std::span<const std::byte> bytes, std::size_t& at) {
    std::uint64_t value = 0;
    for (int i = 0; i < 9; ++i) {
        if (at >= bytes.size()) return std::nullopt;
        const auto byte = static_cast<std::uint64_t>(bytes[at++]);
        if (i == 8) return (value << 8) | byte; // the ninth has no flag
        value = (value << 7) | (byte & 0x7f);
        if ((byte & 0x80) == 0) return value;
    }
    return std::nullopt;
}

std::optional<std::vector<StoredValue>> read_record(std::span<const std::byte> record) {
    std::size_t at = 0;
    const auto header = read_varint(record, at);
    if (!header || *header > record.size()) return std::nullopt;
    std::size_t value_at = *header;
    std::vector<StoredValue> values;
    while (at < *header) {
        const auto type = read_varint(record.first(*header), at);
        const auto size = type ? size_of(*type) : std::nullopt;
        if (!size || *size > record.size() - value_at) return std::nullopt;
        values.push_back(value_of(*type, record.subspan(value_at, *size)));
        value_at += *size;
    }
    return values;
}

} // namespace luft::project
