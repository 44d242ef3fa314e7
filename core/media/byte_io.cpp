#include "media/byte_io.h"

#include <cstdio>
#include <utility>

namespace luft::media {
namespace {

constexpr int kBuffer = 1 << 16;

} // namespace

ByteIo::ByteIo(std::shared_ptr<ByteSource> bytes) : bytes_(std::move(bytes)) {
    auto* buffer = static_cast<unsigned char*>(allocated(av_malloc(kBuffer)));
    io_.reset(avio_alloc_context(buffer, kBuffer, 0, this, read, nullptr, seek));
    if (!io_) {
        av_free(buffer);
        throw std::bad_alloc();
    }
}

void ByteIo::rethrow() {
    if (failure_) std::rethrow_exception(std::exchange(failure_, nullptr));
}

int ByteIo::read(void* self, std::uint8_t* into, int count) {
    auto& io = *static_cast<ByteIo*>(self);
    try {
        const std::span<std::byte> room(reinterpret_cast<std::byte*>(into), static_cast<std::size_t>(count));
        const std::size_t n = io.bytes_->read_at(io.at_, room);
        io.at_ += static_cast<std::int64_t>(n);
        return n == 0 ? AVERROR_EOF : static_cast<int>(n);
    } catch (...) {
        io.failure_ = std::current_exception();
        return AVERROR(EIO);
    }
}

std::int64_t ByteIo::seek(void* self, std::int64_t offset, int whence) {
    auto& io = *static_cast<ByteIo*>(self);
    const std::int64_t size = io.bytes_->size();
    std::int64_t base = 0;
    switch (whence & ~AVSEEK_FORCE) {
    case AVSEEK_SIZE:
        return size;
    case SEEK_SET:
        break;
    case SEEK_CUR:
        base = io.at_;
        break;
    case SEEK_END:
        base = size;
        break;
    default:
        return AVERROR(EINVAL);
    }
    std::int64_t target = 0;
    if (__builtin_add_overflow(base, offset, &target) || target < 0) return AVERROR(EINVAL);
    return io.at_ = target;
}

} // namespace luft::media
