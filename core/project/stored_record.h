// One row as SQLite lays it out: numbers of varying length, then a header of types and the values.
#pragma once

#include "project/page_file.h"

namespace luft::project {

/// Bytes as one number, the highest first; bytes behind the end count as 0.
std::uint64_t big_endian(std::span<const std::byte> bytes, std::size_t offset, std::size_t size);

/// A number of one to nine bytes (section 1.6); `at` goes behind it. None where the bytes end before it does.
std::optional<std::uint64_t> read_varint(std::span<const std::byte> bytes, std::size_t& at);

/// The values of a record (section 2.1). None where its header or a value doesn't fit into it.
std::optional<std::vector<StoredValue>> read_record(std::span<const std::byte> record);

} // namespace luft::project
