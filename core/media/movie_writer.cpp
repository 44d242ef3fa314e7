#include "media/movie_writer.h"

#include "base/error.h"
#include "media/encoder.h"
#include "media/movie_chapters.h"
#include "media/part_file.h"
#include "media/quiet.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <optional>

namespace luft::media {
namespace {

struct Container {
    std::string_view ending;
    const char* muxer;
    bool pictures; ///< can hold them
};

constexpr std::array kContainers{
    Container{".mp4", "mp4", true}, Container{".m4a", "ipod", false}, Container{".mkv", "matroska", true},
    Container{".mov", "mov", true}, Container{".wav", "wav", false},  Container{".flac", "flac", false},
};

const Container& container_of(const std::filesystem::path& file) {
    std::string ending = file.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    for (const Container& c : kContainers)
        if (c.ending == ending) return c;
    throw Error(Fault::unsupported, "'" + file.string() + "' has an ending that no movie is written for.",
                "Use .mp4, .mkv or .mov for pictures with sound, and .m4a, .wav or .flac for sound alone.");
}

/// As people call it.
std::string name_of(const AVCodecContext& codec) {
    switch (codec.codec_id) {
    case AV_CODEC_ID_H264:
        return "H.264";
    case AV_CODEC_ID_MPEG4:
        return "MPEG-4 part 2";
    case AV_CODEC_ID_AAC:
        return "AAC";
    default:
        return avcodec_get_name(codec.codec_id);
    }
}

const AVOutputFormat& muxer_of(const Container& container) {
    const AVOutputFormat* muxer = av_guess_format(container.muxer, nullptr, nullptr);
    if (muxer == nullptr)
        throw Error(Fault::unsupported,
                    std::string("This FFmpeg build can't write ") + container.muxer + " files.");
    return *muxer;
}

class Writer final : public MovieWriter {
  public:
    Writer(const std::filesystem::path& file, const MovieFormat& format)
        : container_(container_of(file)), part_(file) {
        if (format.width != 0 && !container_.pictures)
            throw Error(Fault::bad_request, "'" + file.string() + "' can hold sound only.",
                        "Use .mp4, .mkv or .mov for pictures with sound.");
        AVFormatContext* made = nullptr;
        if (avformat_alloc_output_context2(&made, &muxer_of(container_), nullptr, nullptr) < 0)
            throw std::bad_alloc();
        output_.reset(made);
        output_->pb = part_.io();
        output_->flags |= AVFMT_FLAG_CUSTOM_IO;
        if (format.reproducible) output_->flags |= AVFMT_FLAG_BITEXACT;
        // The encoder's delay stands before time 0. MP4 says so with an edit list, Matroska with a negative
        // time; left alone, the muxer would shift pictures and sound to start at 0 and no time would be true.
        output_->avoid_negative_ts = AVFMT_AVOID_NEG_TS_DISABLED;
        if (format.width != 0) {
            pictures_.emplace(format, *output_->oformat);
            add_stream(pictures_->codec());
        }
        sound_.emplace(format, *output_->oformat);
        sound_stream_ = add_stream(sound_->codec());

        add_chapters(*output_, format.chapters);
        Options options;
        options.set("rf64", "auto"); // a WAV file beyond 4 GiB (EBU Tech 3306); other muxers leave it alone
        check(avformat_write_header(output_.get(), options.get()));
    }

    void picture(const Picture& picture) override {
        open_for_more();
        if (!pictures_) throw Error(Fault::bad_request, "This movie was announced as sound only.");
        pictures_->put(picture, sink(0));
    }

    void picture(const MoviePicture& picture) override {
        open_for_more();
        if (!pictures_) throw Error(Fault::bad_request, "This movie was announced as sound only.");
        pictures_->put(picture, sink(0));
    }

    void sound(std::span<const float> samples) override {
        open_for_more();
        sound_->put(samples, sink(sound_stream_));
    }

    void finish() override {
        open_for_more();
        if (pictures_) pictures_->finish(sink(0));
        sound_->finish(sink(sound_stream_));
        if (!anything_)
            throw Error(Fault::bad_request, "A movie without pictures and sound can't be written.");
        check(av_write_trailer(output_.get()));
        part_.keep();
        finished_ = true;
    }

    [[nodiscard]] MovieCodecs codecs() const override {
        return {pictures_ ? name_of(pictures_->codec()) : "", name_of(sound_->codec())};
    }

  private:
    int add_stream(const AVCodecContext& codec) {
        AVStream* stream = allocated(avformat_new_stream(output_.get(), nullptr));
        check(avcodec_parameters_from_context(stream->codecpar, &codec));
        stream->time_base = codec.time_base;
        stream->avg_frame_rate = codec.framerate;
        return stream->index;
    }

    PacketSink sink(int stream) {
        return [this, stream](AVPacket& packet, AVRational time_base) {
            packet.stream_index = stream;
            av_packet_rescale_ts(&packet, time_base, output_->streams[stream]->time_base);
            anything_ = true;
            check(av_interleaved_write_frame(output_.get(), &packet));
        };
    }

    void open_for_more() const {
        if (finished_) throw Error(Fault::bad_request, "The movie is finished already.");
    }

    void check(int code) const {
        if (code < 0) part_.fail(meaning(code));
    }

    const Container& container_;
    PartFile part_; // before the context that writes into it
    OutputContext output_;
    std::optional<PictureEncoder> pictures_;
    std::optional<SoundEncoder> sound_;
    int sound_stream_ = 0;
    bool anything_ = false;
    bool finished_ = false;
};

} // namespace

std::unique_ptr<MovieWriter> write_movie(const std::filesystem::path& file, const MovieFormat& format) {
    settle_library();
    return std::make_unique<Writer>(file, format);
}

SampleRate movie_rate(const std::filesystem::path& file, SampleRate wanted) {
    settle_library();
    constexpr SampleRate kUsual{48000};
    return takes_rate(muxer_of(container_of(file)), wanted) ? wanted : kUsual;
}

} // namespace luft::media
