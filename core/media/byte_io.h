// Lets FFmpeg read a ByteSource, and nothing else.
#pragma once

#include "base/bytes.h"
#include "media/handles.h"

#include <exception>
#include <memory>

namespace luft::media {

/// A seekable AVIOContext over the bytes. An exception of the source can't pass through FFmpeg; it is kept
/// and thrown by `rethrow` once FFmpeg has returned.
class ByteIo {
  public:
    explicit ByteIo(std::shared_ptr<ByteSource> bytes);
    ByteIo(const ByteIo&) = delete;
    ByteIo& operator=(const ByteIo&) = delete;
    ~ByteIo() = default;

    [[nodiscard]] AVIOContext* get() { return io_.get(); }
    void rethrow();

  private:
    static int read(void* self, std::uint8_t* into, int count);
    static std::int64_t seek(void* self, std::int64_t offset, int whence);

    std::shared_ptr<ByteSource> bytes_;
    std::int64_t at_ = 0;
    std::exception_ptr failure_;
    Io io_;
};

} // namespace luft::media
