// Bytes that can be read at any place: a file, or media carried inside a project.
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>

namespace luft {

class ByteSource {
  public:
    virtual ~ByteSource() = default;

    [[nodiscard]] virtual std::int64_t size() const = 0;

    /// Reads up to `into.size()` bytes from `offset`; returns how many (0 at the end). Throws
    /// Error(unreadable).
    virtual std::size_t read_at(std::int64_t offset, std::span<std::byte> into) = 0;

    /// What to call it in messages: the file's name.
    [[nodiscard]] virtual std::string name() const = 0;
};

/// A file on disk. Throws Error(not_found, unreadable) when it can't be opened as a regular file.
std::unique_ptr<ByteSource> open_file(const std::filesystem::path& path);

} // namespace luft
