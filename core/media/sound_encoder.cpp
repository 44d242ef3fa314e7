#include "media/encoder_common.h"

#include <algorithm>
#include <string>

namespace luft::media {
namespace {

constexpr std::size_t kFreeBlock = 4096; // for encoders that take any number of samples
constexpr int kMostChannels = 8;
constexpr int kLosslessBits = 24;

bool holds(const AVOutputFormat& container, AVCodecID id) {
    return avformat_query_codec(&container, id, FF_COMPLIANCE_NORMAL) == 1;
}

const AVCodec& sound_codec(const AVOutputFormat& container) {
    // A container whose own default is lossless is asked for just that.
    const AVCodecID own = container.audio_codec;
    if (own == AV_CODEC_ID_FLAC) return *allocated(avcodec_find_encoder(own));
    if (own == AV_CODEC_ID_PCM_S16LE) return *allocated(avcodec_find_encoder(AV_CODEC_ID_PCM_S24LE));
    for (const AVCodecID id : {AV_CODEC_ID_AAC, AV_CODEC_ID_MP3, AV_CODEC_ID_AC3, AV_CODEC_ID_MP2}) {
        const AVCodec* codec = avcodec_find_encoder(id);
        if (codec != nullptr && holds(container, id)) return *codec;
    }
    throw Error(Fault::unsupported,
                std::string("There is no sound encoder for a ") + container.name + " file.");
}

bool takes_rate(const AVCodec& codec, int rate) {
    if (codec.supported_samplerates == nullptr) return true;
    for (const int* r = codec.supported_samplerates; *r != 0; ++r)
        if (*r == rate) return true;
    return false;
}

/// The widest sample format of the encoder: the last of those worth having.
AVSampleFormat sample_format(const AVCodec& codec) {
    for (const AVSampleFormat wanted :
         {AV_SAMPLE_FMT_FLTP, AV_SAMPLE_FMT_FLT, AV_SAMPLE_FMT_S32, AV_SAMPLE_FMT_S32P})
        for (const AVSampleFormat* f = codec.sample_fmts; f != nullptr && *f != AV_SAMPLE_FMT_NONE; ++f)
            if (*f == wanted) return wanted;
    return codec.sample_fmts != nullptr ? codec.sample_fmts[0] : AV_SAMPLE_FMT_S16;
}

} // namespace

bool takes_rate(const AVOutputFormat& container, SampleRate rate) {
    return takes_rate(sound_codec(container), rate.per_second);
}

SoundEncoder::SoundEncoder(const MovieFormat& format, const AVOutputFormat& container) {
    const AVCodec& kind = sound_codec(container);
    const int rate = format.sample_rate.per_second;
    if (format.channels < 1 || format.channels > kMostChannels || rate < 1)
        throw Error(Fault::bad_request, "A sound track has 1 to 8 channels and a rate above 0.");
    if (!takes_rate(kind, rate))
        throw Error(Fault::unsupported, std::string("The ") + kind.name + " encoder doesn't take " +
                                            std::to_string(rate) + " samples a second.");
    const Layout layout(format.channels);
    codec_ = new_encoder(kind, format, container);
    codec_->sample_rate = rate;
    codec_->sample_fmt = sample_format(kind);
    codec_->time_base = {1, rate};
    codec_->bit_rate = std::int64_t{1000} * format.audio_kbps;
    if (codec_->sample_fmt == AV_SAMPLE_FMT_S32) codec_->bits_per_raw_sample = kLosslessBits;
    if (av_channel_layout_copy(&codec_->ch_layout, &layout.get()) < 0) throw std::bad_alloc();
    const int opened = avcodec_open2(codec_.get(), &kind, nullptr);
    if (opened < 0)
        throw Error(Fault::unsupported, std::string("The ") + kind.name +
                                            " encoder refuses this sound: " + meaning(opened) + ".");
    const bool any = codec_->frame_size == 0 || (kind.capabilities & AV_CODEC_CAP_VARIABLE_FRAME_SIZE) != 0;
    block_ = any ? kFreeBlock : static_cast<std::size_t>(codec_->frame_size);

    SwrContext* converter = nullptr;
    const int made = swr_alloc_set_opts2(&converter, &codec_->ch_layout, codec_->sample_fmt, rate,
                                         &codec_->ch_layout, AV_SAMPLE_FMT_FLT, rate, 0, nullptr);
    converter_.reset(converter);
    if (made < 0 || swr_init(converter_.get()) < 0)
        throw Error(Fault::unsupported, "The sound can't be converted for its encoder.");
}

void SoundEncoder::put(std::span<const float> samples, const PacketSink& sink) {
    const auto channels = static_cast<std::size_t>(codec_->ch_layout.nb_channels);
    waiting_.insert(waiting_.end(), samples.begin(), samples.end());
    std::size_t done = 0;
    const std::size_t step = block_ * channels;
    for (; waiting_.size() - done >= step; done += step)
        encode(std::span(waiting_).subspan(done, step), sink);
    waiting_.erase(waiting_.begin(), waiting_.begin() + static_cast<std::ptrdiff_t>(done));
}

void SoundEncoder::encode(std::span<const float> samples, const PacketSink& sink) {
    const auto count = static_cast<int>(samples.size() / codec_->ch_layout.nb_channels);
    const Frame frame = new_frame();
    frame->format = codec_->sample_fmt;
    frame->sample_rate = codec_->sample_rate;
    frame->nb_samples = count;
    if (av_channel_layout_copy(&frame->ch_layout, &codec_->ch_layout) < 0 ||
        av_frame_get_buffer(frame.get(), 0) < 0)
        throw std::bad_alloc();
    const std::uint8_t* in[] = {reinterpret_cast<const std::uint8_t*>(samples.data())};
    if (swr_convert(converter_.get(), frame->extended_data, count, in, count) != count)
        throw Error(Fault::internal, "Samples can't be converted for the encoder.");
    frame->pts = next_;
    next_ += count;
    encode_frame(*codec_, frame.get(), sink);
}

void SoundEncoder::finish(const PacketSink& sink) {
    waiting_.resize(waiting_.size() -
                    waiting_.size() % static_cast<std::size_t>(codec_->ch_layout.nb_channels));
    if (!waiting_.empty()) encode(waiting_, sink);
    waiting_.clear();
    encode_frame(*codec_, nullptr, sink);
}

} // namespace luft::media
