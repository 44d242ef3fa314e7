#include "media/still.h"

#include "base/error.h"
#include "base/write_file.h"
#include "media/encoder_common.h"
#include "media/planes.h"

#include <string>

namespace luft::media {
namespace {

/// 1 is finest of FFmpeg's scale of 1 to 31; 2 is what one can't tell from the original by eye. Common
/// practice, no source.
constexpr int kJpegStep = 2;

/// How an encoder wants its pixels.
struct Kind {
    const char* encoder;
    AVPixelFormat pixels;
};

Kind of(StillKind kind) {
    return kind == StillKind::png ? Kind{"png", AV_PIX_FMT_RGB24} : Kind{"mjpeg", AV_PIX_FMT_YUVJ444P};
}

[[noreturn]] void refuse(const char* encoder, const std::string& why) {
    throw Error(Fault::unsupported,
                std::string("The ") + encoder + " encoder refuses this picture: " + why + ".");
}

Codec opened(const Kind& kind, const Picture& picture) {
    const AVCodec* encoder = avcodec_find_encoder_by_name(kind.encoder);
    if (encoder == nullptr)
        throw Error(Fault::unsupported,
                    std::string("This FFmpeg build has no ") + kind.encoder + " encoder.");
    Codec codec(allocated(avcodec_alloc_context3(encoder)));
    codec->width = picture.width;
    codec->height = picture.height;
    codec->pix_fmt = kind.pixels;
    codec->time_base = {1, 1};
    codec->sample_aspect_ratio = {1, 1};
    codec->thread_count = 1;
    codec->flags |= AV_CODEC_FLAG_BITEXACT | AV_CODEC_FLAG_QSCALE;
    codec->global_quality = kJpegStep * FF_QP2LAMBDA;
    codec->qmin = kJpegStep;
    codec->color_range = AVCOL_RANGE_JPEG;
    if (kind.pixels != AV_PIX_FMT_RGB24) codec->colorspace = AVCOL_SPC_SMPTE170M; // JFIF
    const int code = avcodec_open2(codec.get(), encoder, nullptr);
    if (code < 0) refuse(kind.encoder, meaning(code));
    return codec;
}

/// The picture in the encoder's pixels.
Frame frame_of(const Picture& picture, const AVCodecContext& codec) {
    Frame rgb = padded(picture);
    Frame frame = new_frame();
    if (codec.pix_fmt == AV_PIX_FMT_RGB24) {
        frame = std::move(rgb);
    } else {
        frame->format = codec.pix_fmt;
        frame->width = picture.width;
        frame->height = picture.height;
        if (av_frame_get_buffer(frame.get(), 0) < 0) throw std::bad_alloc();
        const Scaler scaler(sws_getContext(picture.width, picture.height, AV_PIX_FMT_RGB24, picture.width,
                                           picture.height, AV_PIX_FMT_YUV444P,
                                           SWS_BICUBIC | SWS_ACCURATE_RND | SWS_FULL_CHR_H_INP | SWS_BITEXACT,
                                           nullptr, nullptr, nullptr));
        if (!scaler) throw Error(Fault::unsupported, "Pictures of this size can't be converted.");
        constexpr int kPlain = 1 << 16;                         // 1.0 in the scaler's fixed point
        const int* matrix = sws_getCoefficients(SWS_CS_ITU601); // of JFIF, with the full range
        sws_setColorspaceDetails(scaler.get(), matrix, 1, matrix, 1, 0, kPlain, kPlain);
        if (sws_scale(scaler.get(), rgb->data, rgb->linesize, 0, picture.height, frame->data,
                      frame->linesize) < 0)
            throw Error(Fault::internal, "A picture can't be converted.");
    }
    frame->sample_aspect_ratio = codec.sample_aspect_ratio;
    frame->color_range = codec.color_range;
    frame->colorspace = codec.colorspace;
    frame->quality = codec.global_quality;
    return frame;
}

} // namespace

void write_still(const Picture& picture, const std::filesystem::path& file, StillKind kind) {
    if (picture.width <= 0 || picture.height <= 0 ||
        picture.rgb.size() != std::size_t{3} * static_cast<std::size_t>(picture.width) *
                                  static_cast<std::size_t>(picture.height))
        throw Error(Fault::bad_request, "There are no pixels to write into '" + file.string() + "'.");
    const Codec codec = opened(of(kind), picture);
    const Frame frame = frame_of(picture, *codec);
    std::string bytes;
    const PacketSink sink = [&](AVPacket& packet, AVRational) {
        bytes.append(reinterpret_cast<const char*>(packet.data), static_cast<std::size_t>(packet.size));
    };
    encode_frame(*codec, frame.get(), sink);
    encode_frame(*codec, nullptr, sink);
    write_file(file, bytes);
}

} // namespace luft::media
