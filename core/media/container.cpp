#include "media/container.h"

#include "base/error.h"
#include "media/formats.h"
#include "media/quiet.h"

#include <algorithm>
#include <filesystem>
#include <string_view>
#include <vector>

namespace luft::media {
namespace {

// Bounds on what opening may read and keep, so that a hostile file can't take unbounded time or memory. They
// are FFmpeg's own defaults or a few times them, to get over large cover art and late streams.
constexpr unsigned kMostProbeBytes = 4U << 20;            // to find out the format
constexpr std::int64_t kMostInfoBytes = 16 << 20;         // to find out the streams
constexpr std::int64_t kMostInfoTime = 20 * AV_TIME_BASE; // of media, likewise
constexpr int kMostStreams = 128;

/// Packets that finding out the streams may take: FFmpeg keeps them all, at half a kilobyte each, and a file
/// of 7 MB may hold a million. An ordinary one has a few thousand in the time above.
constexpr int kMostInfoPackets = 50'000;

/// FFmpeg's score for 'a single frame header that may be chance' is 1; a real but very short MP3 gets 5.
constexpr int kLeastScore = 5;

/// Damaged reads in a row after which a file is taken to end.
constexpr int kMostFailures = 64;

constexpr AVRational kMicroseconds{1, AV_TIME_BASE};

/// No demuxer opens anything but the bytes it was given.
int open_nothing(AVFormatContext*, AVIOContext**, const char*, int, AVDictionary**) {
    return AVERROR(EPERM);
}

Error unreadable(const std::string& name, const std::string& what) {
    return {Fault::unreadable, "'" + name + "' is " + what + "."};
}

/// Asked once a packet while the streams are found out; says when to stop.
int enough(void* asked) {
    return ++*static_cast<int*>(asked) > kMostInfoPackets ? 1 : 0;
}

/// One dictionary a stream, as avformat_find_stream_info wants them.
class StreamOptions {
  public:
    explicit StreamOptions(unsigned streams) : each_(streams, nullptr) {
        for (AVDictionary*& options : each_)
            av_dict_set_int(&options, "max_pixels", kMostPixels, 0);
    }
    StreamOptions(const StreamOptions&) = delete;
    StreamOptions& operator=(const StreamOptions&) = delete;
    ~StreamOptions() {
        for (AVDictionary*& options : each_)
            av_dict_free(&options);
    }
    [[nodiscard]] AVDictionary** get() { return each_.empty() ? nullptr : each_.data(); }

  private:
    std::vector<AVDictionary*> each_;
};

Error no_decoder(const std::string& name, const char* what, AVCodecID codec) {
    return {Fault::unsupported,
            "'" + name + "' holds " + what + " of a kind (" + avcodec_get_name(codec) +
                ") that can't be decoded here.",
            "Convert it to a common format first."};
}

} // namespace

Container::Container(std::shared_ptr<ByteSource> bytes) : bytes_(std::move(bytes)) {
    settle_library();
    if (bytes_->size() == 0) throw unreadable(name(), "empty (0 bytes)");
    io_ = std::make_unique<ByteIo>(bytes_);
    open();
    origin_ = find_origin();
}

void Container::open() {
    // Only the ending is a hint worth giving; the name itself must never be taken for an address or a
    // pattern.
    const std::string hint = "media" + std::filesystem::path(name()).extension().string();
    const AVInputFormat* kind = nullptr;
    const int score = av_probe_input_buffer2(io_->get(), &kind, hint.c_str(), nullptr, 0, kMostProbeBytes);
    io_->rethrow();
    if (score < kLeastScore || kind == nullptr) throw unreadable(name(), "not a sound or video file");
    if (const std::string why = why_refused(*kind); !why.empty()) throw unreadable(name(), why);

    AVFormatContext* context = allocated(avformat_alloc_context());
    context->pb = io_->get();
    context->flags |= AVFMT_FLAG_CUSTOM_IO;
    context->io_open = open_nothing;
    context->protocol_whitelist = av_strdup("");
    context->format_whitelist = av_strdup(allowed_formats().c_str());
    context->probesize = kMostInfoBytes;
    context->max_analyze_duration = kMostInfoTime;
    context->max_streams = kMostStreams;
    const int opened =
        avformat_open_input(&context, hint.c_str(), kind, nullptr); // frees the context on failure
    io_->rethrow();
    const std::string title = kind->long_name != nullptr ? kind->long_name : kind->name;
    if (opened < 0)
        throw unreadable(name(), "broken or cut off near its start (" + title + ", " + meaning(opened) + ")");
    input_.reset(context);

    StreamOptions options(input_->nb_streams);
    int asked = 0;
    input_->interrupt_callback = {enough, &asked};
    const int found = avformat_find_stream_info(input_.get(), options.get());
    input_->interrupt_callback = {};
    io_->rethrow();
    if (found < 0) throw unreadable(name(), "broken (" + title + ", " + meaning(found) + ")");
    const auto* first = input_->streams;
    const bool media = std::any_of(first, first + input_->nb_streams, [](const AVStream* s) {
        return s->codecpar->codec_type == AVMEDIA_TYPE_AUDIO || s->codecpar->codec_type == AVMEDIA_TYPE_VIDEO;
    });
    if (!media) throw unreadable(name(), "without sound and pictures (" + title + ")");
}

std::optional<int> Container::sound_stream() const {
    const int best = av_find_best_stream(input_.get(), AVMEDIA_TYPE_AUDIO, -1, -1, nullptr, 0);
    if (best < 0) {
        for (unsigned i = 0; i < input_->nb_streams; ++i)
            if (stream(i).codecpar->codec_type == AVMEDIA_TYPE_AUDIO)
                throw unreadable(
                    name(), "broken: it announces sound, but neither its rate nor its channels can be read");
        return std::nullopt;
    }
    const AVCodecParameters& sound = *stream(best).codecpar;
    if (avcodec_find_decoder(sound.codec_id) == nullptr) throw no_decoder(name(), "sound", sound.codec_id);
    return best;
}

std::optional<int> Container::picture_stream() const {
    constexpr int kStill =
        AV_DISPOSITION_ATTACHED_PIC | AV_DISPOSITION_TIMED_THUMBNAILS | AV_DISPOSITION_STILL_IMAGE;
    const auto rank = [&](int i) {
        const AVStream& s = stream(i);
        return std::pair((s.disposition & AV_DISPOSITION_DEFAULT) != 0,
                         std::int64_t{s.codecpar->width} * s.codecpar->height);
    };
    std::optional<int> best;
    AVCodecID without = AV_CODEC_ID_NONE;
    for (int i = 0; i < static_cast<int>(input_->nb_streams); ++i) {
        const AVStream& s = stream(i);
        const AVCodecParameters& picture = *s.codecpar;
        if (picture.codec_type != AVMEDIA_TYPE_VIDEO || (s.disposition & kStill) != 0) continue;
        if (avcodec_find_decoder(picture.codec_id) == nullptr) {
            without = picture.codec_id;
            continue;
        }
        if (picture.width <= 0 || picture.height <= 0 || picture.width > kMostPixels / picture.height)
            continue;
        if (!best || rank(i) > rank(*best)) best = i;
    }
    if (!best && without != AV_CODEC_ID_NONE) throw no_decoder(name(), "pictures", without);
    return best;
}

std::int64_t Container::find_origin() const {
    const std::int64_t start = input_->start_time;
    if (start == AV_NOPTS_VALUE) return 0;
    // MP3 counts the encoder's delay as time; the first sample after it is what was recorded first.
    const bool counts_delay = std::string_view(input_->iformat->name) == "mp3";
    return counts_delay || starts_anywhere() ? start : 0;
}

bool Container::starts_anywhere() const {
    // Ogg is marked so too, for chained streams, but its clock starts at 0.
    if ((input_->iformat->flags & AVFMT_TS_DISCONT) != 0 && std::string_view(input_->iformat->name) != "ogg")
        return true;
    const std::int64_t start = input_->start_time;
    return start != AV_NOPTS_VALUE && static_cast<double>(start) > kMostLateStart.value() * AV_TIME_BASE;
}

std::optional<Seconds> Container::media_time(const AVStream& stream, std::int64_t stamp) const {
    constexpr double kAbsurd = 1e9; // seconds: 31 years
    if (stamp == AV_NOPTS_VALUE) return std::nullopt;
    const double t =
        static_cast<double>(stamp) * av_q2d(stream.time_base) - static_cast<double>(origin_) / AV_TIME_BASE;
    if (!(std::abs(t) < kAbsurd)) return std::nullopt;
    return Seconds(t);
}

std::optional<Seconds> Container::claimed_end() const {
    if (input_->duration == AV_NOPTS_VALUE || input_->duration <= 0) return std::nullopt;
    const std::int64_t start = input_->start_time == AV_NOPTS_VALUE ? 0 : input_->start_time;
    const double end =
        static_cast<double>(start) + static_cast<double>(input_->duration) - static_cast<double>(origin_);
    return Seconds(end / AV_TIME_BASE);
}

std::optional<Seconds> Container::claimed_end(const AVStream& stream) const {
    if (stream.duration == AV_NOPTS_VALUE || stream.duration <= 0) return std::nullopt;
    const std::int64_t start = stream.start_time == AV_NOPTS_VALUE
                                   ? av_rescale_q(origin_, kMicroseconds, stream.time_base)
                                   : stream.start_time;
    std::int64_t end = 0;
    if (__builtin_add_overflow(start, stream.duration, &end)) return std::nullopt;
    return media_time(stream, end);
}

void Container::select(int chosen) {
    for (unsigned i = 0; i < input_->nb_streams; ++i)
        stream(i).discard = i == static_cast<unsigned>(chosen) ? AVDISCARD_DEFAULT : AVDISCARD_ALL;
}

bool Container::read(AVPacket& packet) {
    for (int failures = 0; failures < kMostFailures; ++failures) {
        av_packet_unref(&packet);
        const int code = av_read_frame(input_.get(), &packet);
        io_->rethrow();
        if (code >= 0) return true;
        if (code == AVERROR_EOF) return false;
    }
    return false;
}

bool Container::seek(const AVStream& stream, std::int64_t stamp) {
    const int code = av_seek_frame(input_.get(), stream.index, stamp, AVSEEK_FLAG_BACKWARD);
    io_->rethrow();
    return code >= 0;
}

bool Container::seek(Seconds t) {
    const auto at = static_cast<std::int64_t>(t.value() * AV_TIME_BASE) + origin_;
    const int code = av_seek_frame(input_.get(), -1, at, AVSEEK_FLAG_BACKWARD);
    io_->rethrow();
    return code >= 0;
}

} // namespace luft::media
