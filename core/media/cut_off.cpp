#include "media/cut_off.h"

#include "media/container.h"
#include "media/packet_scan.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>

namespace luft::media {
namespace {

constexpr Seconds kMostRounding{1.0};
constexpr double kMostRoundingShare = 0.001;

bool lacks(Seconds announced, Seconds ends) {
    return announced - ends > std::max(kMostRounding, announced * kMostRoundingShare);
}

/// Size of the samples as a WAV file's header gives it (RIFF, 1991: chunks of a name, a size and the data),
/// which FFmpeg replaces by what is there. None when it is left open, as in a stream.
struct WaveData {
    std::int64_t announced = 0, there = 0; ///< bytes
};

std::optional<WaveData> wave_data(ByteSource& bytes) {
    constexpr std::int64_t kHeader = 8, kMostChunks = 64;
    constexpr std::uint32_t kOpen = 0xFFFFFFFF;
    std::array<std::byte, kHeader> header{};
    std::int64_t at = 12; // "RIFF", size, "WAVE"
    for (int chunk = 0; chunk < kMostChunks && bytes.read_at(at, header) == header.size(); ++chunk) {
        std::uint32_t size = 0;
        for (int i = 3; i >= 0; --i)
            size = size << 8 | std::to_integer<std::uint32_t>(header[static_cast<std::size_t>(4 + i)]);
        at += kHeader;
        if (std::string_view(reinterpret_cast<const char*>(header.data()), 4) != "data") {
            at += size + size % 2;
            continue;
        }
        if (size == 0 || size == kOpen) return std::nullopt;
        return WaveData{size, std::min<std::int64_t>(size, bytes.size() - at)};
    }
    return std::nullopt;
}

std::optional<CutOff> short_wave(ByteSource& bytes, Seconds claimed) {
    const auto data = wave_data(bytes);
    if (!data || data->there <= 0) return std::nullopt;
    const Seconds announced =
        claimed * (static_cast<double>(data->announced) / static_cast<double>(data->there));
    if (!lacks(announced, claimed)) return std::nullopt;
    return CutOff{announced, claimed};
}

/// Goes near the announced end, as far as the index leads, and looks whether the packets reach it.
bool reaches(Container& container, const AVStream& stream, Seconds announced) {
    const Seconds near = announced - 2 * kMostRounding;
    const auto stamp = static_cast<std::int64_t>(near.value() / av_q2d(stream.time_base)) +
                       av_rescale_q(container.origin(), {1, AV_TIME_BASE}, stream.time_base);
    if (!container.seek(stream, stamp)) return false;
    return !lacks(announced, scan_packets(container, std::nullopt, true).end);
}

} // namespace

std::optional<CutOff> find_cut_off(const std::shared_ptr<ByteSource>& bytes) {
    Container container(bytes);
    const std::optional<Seconds> announced = container.claimed_end();
    if (!announced) return std::nullopt;
    if (container.format().iformat->name == std::string_view("wav")) return short_wave(*bytes, *announced);
    // FFmpeg's guesses from the bit rate, and from the last stamps in the file, announce nothing.
    if (container.format().duration_estimation_method != AVFMT_DURATION_FROM_STREAM) return std::nullopt;

    const std::optional<int> pictures = container.picture_stream();
    const std::optional<int> stream = pictures ? pictures : container.sound_stream();
    if (!stream || reaches(container, container.stream(*stream), *announced)) return std::nullopt;
    Container again(bytes);
    const Seconds ends = scan_packets(again, std::nullopt, true).end;
    if (!lacks(*announced, ends)) return std::nullopt;
    return CutOff{*announced, ends};
}

} // namespace luft::media
