// What the picture and the sound encoder share.
#pragma once

#include "base/error.h"
#include "media/encoder.h"
#include "media/quiet.h"

namespace luft::media {

inline Codec new_encoder(const AVCodec& kind, const MovieFormat& format, const AVOutputFormat& container) {
    Codec codec(allocated(avcodec_alloc_context3(&kind)));
    codec->thread_count = format.reproducible ? 1 : 0;
    if (format.reproducible) codec->flags |= AV_CODEC_FLAG_BITEXACT;
    if ((container.flags & AVFMT_GLOBALHEADER) != 0) codec->flags |= AV_CODEC_FLAG_GLOBAL_HEADER;
    return codec;
}

/// Sends one frame (null = no more) and hands on every packet that is ready.
inline void encode_frame(AVCodecContext& codec, const AVFrame* frame, const PacketSink& sink) {
    const auto check = [&](int code) {
        if (code < 0)
            throw Error(Fault::cannot_write,
                        std::string("The ") + codec.codec->name + " encoder failed: " + meaning(code) + ".");
    };
    check(avcodec_send_frame(&codec, frame));
    const Packet packet = new_packet();
    for (;;) {
        const int code = avcodec_receive_packet(&codec, packet.get());
        if (code == AVERROR(EAGAIN) || code == AVERROR_EOF) return;
        check(code);
        sink(*packet, codec.time_base);
        av_packet_unref(packet.get());
    }
}

} // namespace luft::media
