#include "media/packet_scan.h"

#include <algorithm>
#include <vector>

namespace luft::media {
namespace {

constexpr std::size_t kMostPictures = 600;
constexpr double kSteady = 0.1; // share of the median step; common practice, no source

/// The last pictures of a walk that was cut off may lack one that comes later in the file: they are left out.
constexpr std::size_t kReordered = 16;

bool varies(std::vector<std::int64_t> stamps, bool cut_off) {
    std::sort(stamps.begin(), stamps.end());
    if (cut_off && stamps.size() > 2 * kReordered) stamps.resize(stamps.size() - kReordered);
    std::vector<std::int64_t> steps;
    for (std::size_t i = 1; i < stamps.size(); ++i)
        steps.push_back(stamps[i] - stamps[i - 1]);
    if (steps.size() < 2) return false;
    std::vector<std::int64_t> ordered = steps;
    const auto middle = ordered.begin() + static_cast<std::ptrdiff_t>(ordered.size() / 2);
    std::nth_element(ordered.begin(), middle, ordered.end());
    const double most = std::max(2.0, kSteady * static_cast<double>(*middle));
    return std::any_of(steps.begin(), steps.end(), [&](std::int64_t step) {
        return std::abs(static_cast<double>(step - *middle)) > most;
    });
}

} // namespace

PacketScan scan_packets(Container& container, std::optional<int> pictures, bool to_the_end) {
    PacketScan scan;
    const Packet packet = new_packet();
    std::vector<std::int64_t> stamps;
    for (;;) {
        if (!to_the_end && stamps.size() >= kMostPictures) break;
        if (!container.read(*packet)) {
            scan.whole = true;
            break;
        }
        const AVStream& stream = container.stream(packet->stream_index);
        if (stream.disposition & AV_DISPOSITION_ATTACHED_PIC) continue;
        const std::int64_t stamp = packet->pts != AV_NOPTS_VALUE ? packet->pts : packet->dts;
        const std::optional<Seconds> time = container.media_time(stream, stamp);
        if (!time) continue;
        if (pictures && packet->stream_index == *pictures && stamps.size() < kMostPictures)
            stamps.push_back(stamp);
        const Seconds length(static_cast<double>(packet->duration) * av_q2d(stream.time_base));
        scan.end = std::max(scan.end, *time + length);
    }
    scan.variable_rate = varies(std::move(stamps), !scan.whole);
    return scan;
}

} // namespace luft::media
