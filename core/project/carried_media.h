// A recording inside the project file, in chunks.
#pragma once

#include "base/bytes.h"
#include "base/progress.h"
#include "project/database.h"

#include <filesystem>
#include <memory>

namespace luft::project {

/// Bytes a chunk, the last one apart: small enough for memory, large enough that an hour of video has only
/// some thousands of rows. Our choice, no source.
inline constexpr std::int64_t kChunkSize = 1 << 20;

/// Copies the bytes into the file, inside the caller's transaction; the new row of `carried`. Throws
/// Error(unreadable) when the source ends early, Stopped.
std::int64_t carry(Database& database, ByteSource& from, const Progress& progress);

/// The carried bytes over the caller's connection, which must outlive them.
std::unique_ptr<ByteSource> carried_bytes(Database& database, std::int64_t carried);

/// The same over a connection of their own: lives as long as it likes, in any thread.
std::unique_ptr<ByteSource> open_carried(const std::filesystem::path& project, std::int64_t carried);

} // namespace luft::project
