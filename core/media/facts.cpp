#include "base/error.h"
#include "media/container.h"
#include "media/cut_off.h"
#include "media/layout.h"
#include "media/media.h"
#include "media/packet_scan.h"
#include "media/shape.h"
#include "media/sound.h"
#include "media/turn.h"

#include <utility>

namespace luft::media {
namespace {

VideoFacts picture_facts(AVFormatContext& format, AVStream& stream) {
    const AVCodecParameters& picture = *stream.codecpar;
    VideoFacts facts;
    facts.codec = avcodec_get_name(picture.codec_id);
    Shape shape =
        square_pixels(picture.width, picture.height, av_guess_sample_aspect_ratio(&format, &stream, nullptr));
    if (turn_of(stream).transposed) std::swap(shape.width, shape.height);
    facts.width = shape.width;
    facts.height = shape.height;
    for (const AVRational rate : {stream.avg_frame_rate, stream.r_frame_rate})
        if (facts.frame_rate == Rational(0) && rate.num > 0 && rate.den > 0)
            facts.frame_rate = Rational(rate.num, rate.den);
    return facts;
}

} // namespace

Facts probe(std::unique_ptr<ByteSource> bytes) {
    const std::shared_ptr<ByteSource> shared = std::move(bytes);
    Container container(shared);
    AVFormatContext& format = container.format();
    const std::optional<int> sound = container.sound_stream();
    const std::optional<int> pictures = container.picture_stream();
    if (!sound && !pictures)
        throw Error(Fault::unreadable, "'" + container.name() + "' has neither sound nor a moving picture.");

    Facts facts;
    facts.container = format.iformat->long_name != nullptr ? format.iformat->long_name : format.iformat->name;
    if (sound)
        facts.audio = {avcodec_get_name(container.stream(*sound).codecpar->codec_id),
                       sound_of(shared)->format()};
    if (pictures) facts.video = picture_facts(format, container.stream(*pictures));

    // FFmpeg's guess from size and bit rate may be far off (raw AAC): then the packets are counted.
    const bool guessed = format.duration_estimation_method == AVFMT_DURATION_FROM_BITRATE;
    const std::optional<Seconds> claimed = container.claimed_end();
    const bool count = guessed || !claimed;
    PacketScan scan;
    if (facts.video || count) scan = scan_packets(container, pictures, count);
    if (facts.video) facts.video->variable_rate = scan.variable_rate;
    facts.duration = count && scan.end > Seconds(0) ? scan.end : claimed.value_or(Seconds(0));
    if (const auto cut = find_cut_off(shared)) {
        facts.duration = cut->ends;
        facts.cut_off_from = cut->announced;
    }
    if (facts.duration > kMostLength) throw too_long(container.name());
    return facts;
}

} // namespace luft::media
