#include "media/encoder_common.h"
#include "media/planes.h"

#include <algorithm>
#include <limits>
#include <string>
#include <string_view>

namespace luft::media {
namespace {

constexpr int kMostSide = 8192;
constexpr int kKeyPictureSeconds = 2; // so that seeking never decodes more than two seconds; tuned by hand

const AVCodec& picture_codec(const AVOutputFormat& container) {
    for (const char* name : {"libx264", "libopenh264", "mpeg4"}) {
        const AVCodec* codec = avcodec_find_encoder_by_name(name);
        if (codec != nullptr && avformat_query_codec(&container, codec->id, FF_COMPLIANCE_NORMAL) == 1)
            return *codec;
    }
    throw Error(Fault::unsupported,
                std::string("There is no picture encoder for a ") + container.name + " file.");
}

AVRational exact(Rational r) {
    constexpr std::int64_t kMost = std::numeric_limits<int>::max();
    if (r <= Rational(0) || r.num() > kMost || r.den() > kMost)
        throw Error(Fault::bad_request, "A movie's frame rate must be above 0.");
    return {static_cast<int>(r.num()), static_cast<int>(r.den())};
}

void set_effort(AVCodecContext& codec, Options& options, const MovieFormat& format) {
    if (!format.quick) {
        codec.bit_rate = std::int64_t{1000} * format.video_kbps;
        options.set("preset", "fast");
        return;
    }
    // Tuned by hand at 720p: what an editor looks at without noticing the codec, many times faster than real
    // time. Options that an encoder doesn't know are left alone.
    constexpr double kBitsPerPixel = 0.15; // for encoders without a constant quality
    const double pixels = static_cast<double>(codec.width) * codec.height * format.frame_rate.as_double();
    if (codec.codec_id == AV_CODEC_ID_MPEG4) {
        constexpr int kQuantizer = 3;
        codec.flags |= AV_CODEC_FLAG_QSCALE;
        codec.global_quality = kQuantizer * FF_QP2LAMBDA;
    } else if (std::string_view(codec.codec->name) == "libx264") {
        options.set("preset", "superfast");
        options.set("crf", "21");
    } else {
        codec.bit_rate = std::max<std::int64_t>(static_cast<std::int64_t>(pixels * kBitsPerPixel), 200'000);
    }
}

} // namespace

PictureEncoder::PictureEncoder(const MovieFormat& format, const AVOutputFormat& container) {
    if (format.width < 2 || format.height < 2 || format.width % 2 != 0 || format.height % 2 != 0 ||
        format.width > kMostSide || format.height > kMostSide)
        throw Error(Fault::bad_request, "A movie's width and height must be even numbers from 2 to 8192.");
    const AVRational rate = exact(format.frame_rate);

    const AVCodec& kind = picture_codec(container);
    codec_ = new_encoder(kind, format, container);
    codec_->width = format.width;
    codec_->height = format.height;
    codec_->pix_fmt = AV_PIX_FMT_YUV420P;
    codec_->time_base = av_inv_q(rate);
    codec_->framerate = rate;
    codec_->gop_size = static_cast<int>((format.frame_rate * Rational(kKeyPictureSeconds)).ceil());
    codec_->colorspace = static_cast<AVColorSpace>(format.colours.matrix);
    codec_->color_primaries = static_cast<AVColorPrimaries>(format.colours.primaries);
    codec_->color_trc = static_cast<AVColorTransferCharacteristic>(format.colours.transfer);
    codec_->color_range = AVCOL_RANGE_MPEG;
    codec_->max_b_frames = 0; // every container then starts at time 0 without a shift
    Options options;
    set_effort(*codec_, options, format);
    const int opened = avcodec_open2(codec_.get(), &kind, options.get());
    if (opened < 0)
        throw Error(Fault::unsupported, std::string("The ") + kind.name +
                                            " encoder refuses this movie: " + meaning(opened) + ".");

    scaler_.reset(sws_getContext(format.width, format.height, AV_PIX_FMT_RGB24, format.width, format.height,
                                 codec_->pix_fmt, SWS_BICUBIC | SWS_ACCURATE_RND | SWS_BITEXACT, nullptr,
                                 nullptr, nullptr));
    if (!scaler_) throw Error(Fault::unsupported, "Pictures of this size can't be converted.");
    frame_ = new_frame();
    frame_->format = codec_->pix_fmt;
    frame_->width = format.width;
    frame_->height = format.height;
    if (av_frame_get_buffer(frame_.get(), 0) < 0) throw std::bad_alloc();
}

void PictureEncoder::put(const Picture& picture, const PacketSink& sink) {
    const auto bytes = std::size_t{3} * static_cast<std::size_t>(codec_->width) * codec_->height;
    if (picture.width != codec_->width || picture.height != codec_->height || picture.rgb.size() != bytes)
        throw Error(Fault::bad_request, "A picture hasn't the size that the movie was announced with.");
    if (av_frame_make_writable(frame_.get()) < 0) throw std::bad_alloc();
    const Frame rgb = padded(picture);
    if (sws_scale(scaler_.get(), rgb->data, rgb->linesize, 0, picture.height, frame_->data,
                  frame_->linesize) < 0)
        throw Error(Fault::internal, "A picture can't be converted.");
    frame_->pts = next_++;
    encode_frame(*codec_, frame_.get(), sink);
}

void PictureEncoder::put(const MoviePicture& picture, const PacketSink& sink) {
    if (picture.width() != codec_->width || picture.height() != codec_->height)
        throw Error(Fault::bad_request, "A picture hasn't the size that the movie was announced with.");
    const Frame frame = new_frame();
    if (av_frame_ref(frame.get(), &picture.frame()) < 0) throw std::bad_alloc();
    frame->pts = next_++;
    encode_frame(*codec_, frame.get(), sink);
}

void PictureEncoder::finish(const PacketSink& sink) {
    encode_frame(*codec_, nullptr, sink);
}

} // namespace luft::media
