// FFmpeg's objects, each freed by its owner's end. Stays inside core/media.
#pragma once

extern "C" {
#include <libavcodec/avcodec.h>
#include <libavformat/avformat.h>
#include <libavutil/avutil.h>
#include <libavutil/channel_layout.h>
#include <libavutil/dict.h>
#include <libavutil/frame.h>
#include <libavutil/pixdesc.h>
#include <libswresample/swresample.h>
#include <libswscale/swscale.h>
}

#include <cstddef>
#include <memory>
#include <new>

namespace luft::media {

struct Free {
    void operator()(AVFormatContext* p) const { avformat_free_context(p); }
    void operator()(AVCodecContext* p) const { avcodec_free_context(&p); }
    void operator()(AVFrame* p) const { av_frame_free(&p); }
    void operator()(AVPacket* p) const { av_packet_free(&p); }
    void operator()(SwsContext* p) const { sws_freeContext(p); }
    void operator()(SwrContext* p) const { swr_free(&p); }
    /// The buffer of a custom AVIOContext isn't its own; FFmpeg may have replaced the one it was given.
    void operator()(AVIOContext* p) const {
        if (p != nullptr) av_freep(&p->buffer);
        avio_context_free(&p);
    }
};

/// An input context must be closed, not only freed: the demuxer has state of its own.
struct CloseInput {
    void operator()(AVFormatContext* p) const { avformat_close_input(&p); }
};

using OutputContext = std::unique_ptr<AVFormatContext, Free>;
using InputContext = std::unique_ptr<AVFormatContext, CloseInput>;
using Codec = std::unique_ptr<AVCodecContext, Free>;
using Frame = std::unique_ptr<AVFrame, Free>;
using Packet = std::unique_ptr<AVPacket, Free>;
using Scaler = std::unique_ptr<SwsContext, Free>;
using Resampler = std::unique_ptr<SwrContext, Free>;
using Io = std::unique_ptr<AVIOContext, Free>;

/// FFmpeg answers a null pointer when memory runs out.
template <class T>
T* allocated(T* p) {
    if (p == nullptr) throw std::bad_alloc();
    return p;
}

inline Frame new_frame() {
    return Frame(allocated(av_frame_alloc()));
}
inline Packet new_packet() {
    return Packet(allocated(av_packet_alloc()));
}

/// Options handed to an FFmpeg call, which takes out those it knows.
class Options {
  public:
    Options() = default;
    Options(const Options&) = delete;
    Options& operator=(const Options&) = delete;
    ~Options() { av_dict_free(&dict_); }
    void set(const char* key, const char* value) { av_dict_set(&dict_, key, value, 0); }
    [[nodiscard]] AVDictionary** get() { return &dict_; }

  private:
    AVDictionary* dict_ = nullptr;
};

/// A channel layout that frees what it holds.
class Layout {
  public:
    Layout() = default;
    explicit Layout(int channels) { av_channel_layout_default(&layout_, channels); }
    explicit Layout(const AVChannelLayout& other) { copy(other); }
    Layout(const Layout& other) { copy(other.layout_); }
    Layout& operator=(const Layout& other) {
        if (this != &other) copy(other.layout_);
        return *this;
    }
    ~Layout() { av_channel_layout_uninit(&layout_); }

    [[nodiscard]] const AVChannelLayout& get() const { return layout_; }
    [[nodiscard]] int channels() const { return layout_.nb_channels; }
    [[nodiscard]] bool same_as(const AVChannelLayout& other) const {
        return av_channel_layout_compare(&layout_, &other) == 0;
    }

  private:
    void copy(const AVChannelLayout& other) {
        if (av_channel_layout_copy(&layout_, &other) < 0) throw std::bad_alloc();
    }
    AVChannelLayout layout_{};
};

} // namespace luft::media
