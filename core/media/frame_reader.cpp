#include "media/frame_reader.h"

#include "base/error.h"
#include "media/quiet.h"

namespace luft::media {

FrameReader::FrameReader(std::unique_ptr<Container> container, int stream)
    : container_(std::move(container)), stream_(&container_->stream(stream)) {
    container_->select(stream);
    const AVCodec* kind = avcodec_find_decoder(stream_->codecpar->codec_id);
    codec_.reset(allocated(avcodec_alloc_context3(kind)));
    int code = avcodec_parameters_to_context(codec_.get(), stream_->codecpar);
    if (code >= 0) {
        codec_->pkt_timebase = stream_->time_base; // needed to cut an encoder's delay at the right place
        codec_->max_pixels = kMostPixels;
        codec_->thread_count = 1; // the same result on every machine
        code = avcodec_open2(codec_.get(), kind, nullptr);
    }
    if (code < 0)
        throw Error(code == AVERROR_INVALIDDATA ? Fault::unreadable : Fault::unsupported,
                    "'" + container_->name() + "' can't be decoded (" +
                        avcodec_get_name(stream_->codecpar->codec_id) + ", " + meaning(code) + ").");
}

Frame FrameReader::next() {
    Frame frame = new_frame();
    for (;;) {
        const int code = avcodec_receive_frame(codec_.get(), frame.get());
        if (code >= 0) return frame;
        if (code == AVERROR_EOF) return nullptr;
        if (code != AVERROR(EAGAIN)) damage_ = meaning(code);
        if (draining_) return nullptr;
        feed();
    }
}

void FrameReader::feed() {
    while (container_->read(*packet_)) {
        if (packet_->stream_index != stream_->index) continue;
        const int code = avcodec_send_packet(codec_.get(), packet_.get());
        if (code >= 0) return;
        damage_ = meaning(code);
    }
    avcodec_send_packet(codec_.get(), nullptr);
    draining_ = true;
}

bool FrameReader::seek(std::int64_t stamp) {
    draining_ = false;
    avcodec_flush_buffers(codec_.get());
    return container_->seek(*stream_, stamp);
}

bool FrameReader::seek(Seconds t) {
    draining_ = false;
    avcodec_flush_buffers(codec_.get());
    return container_->seek(t);
}

} // namespace luft::media
