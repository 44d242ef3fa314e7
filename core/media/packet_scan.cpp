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

/// The stamps of the pictures of a walk. In MPEG program streams only some packets carry a presentation time;
/// then the decoding times, which FFmpeg fills in, must do.
class PictureStamps {
  public:
    [[nodiscard]] bool full() const { return seen_ >= kMostPictures; }
    void add(const AVPacket& packet) {
        if (full()) return;
        ++seen_;
        if (packet.pts != AV_NOPTS_VALUE) shown_.push_back(packet.pts);
        if (packet.dts != AV_NOPTS_VALUE) decoded_.push_back(packet.dts);
    }
    [[nodiscard]] bool vary(bool cut_off) const {
        if (shown_.size() == seen_) return varies(shown_, cut_off);
        return decoded_.size() == seen_ && varies(decoded_, cut_off);
    }

  private:
    std::size_t seen_ = 0;
    std::vector<std::int64_t> shown_;
    std::vector<std::int64_t> decoded_;
};

} // namespace

PacketScan scan_packets(Container& container, std::optional<int> pictures, bool to_the_end) {
    PacketScan scan;
    const Packet packet = new_packet();
    PictureStamps stamps;
    while (to_the_end || !stamps.full()) {
        if (!container.read(*packet)) {
            scan.whole = true;
            break;
        }
        const AVStream& stream = container.stream(packet->stream_index);
        if ((stream.disposition & AV_DISPOSITION_ATTACHED_PIC) != 0) continue;
        if (pictures && packet->stream_index == *pictures) stamps.add(*packet);
        const std::optional<Seconds> time =
            container.media_time(stream, packet->pts != AV_NOPTS_VALUE ? packet->pts : packet->dts);
        const Seconds length(static_cast<double>(packet->duration) * av_q2d(stream.time_base));
        if (time) scan.end = std::max(scan.end, *time + length);
    }
    scan.variable_rate = stamps.vary(!scan.whole);
    return scan;
}

} // namespace luft::media
