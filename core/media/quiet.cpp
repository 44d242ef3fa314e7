#include "media/quiet.h"

#include "media/handles.h"

#include <array>

extern "C" {
#include <libavutil/log.h>
#include <libavutil/mem.h>
}

namespace luft::media {
namespace {

/// Room for the largest picture let in (see kMostPixels) at 6 bytes a pixel, and for the packet index of a
/// day of sound in MP4, 100 MB.
constexpr std::size_t kMostAllocation = std::size_t{192} << 20;

void say_nothing(void*, int, const char*, va_list) {}

} // namespace

void settle_library() {
    static const bool settled = [] {
        av_log_set_callback(say_nothing);
        av_max_alloc(kMostAllocation);
        return true;
    }();
    static_cast<void>(settled);
}

std::string meaning(int code) {
    std::array<char, AV_ERROR_MAX_STRING_SIZE> text{};
    av_strerror(code, text.data(), text.size());
    return text.data();
}

} // namespace luft::media
