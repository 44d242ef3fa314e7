#include "media/sample_converter.h"

#include "base/error.h"
#include "media/quiet.h"

#include <cmath>

namespace luft::media {

std::span<const float> SampleConverter::convert(const AVFrame& frame) {
    out_.clear();
    if (frame.nb_samples <= 0 || frame.ch_layout.nb_channels <= 0 || frame.sample_rate <= 0) return out_;
    prepare(frame);
    run(const_cast<const std::uint8_t**>(frame.extended_data), frame.nb_samples); // swr only reads
    return out_;
}

std::span<const float> SampleConverter::rest() {
    out_.clear();
    if (swr_ && in_rate_ != rate_.per_second) run(nullptr, 0);
    return out_;
}

std::int64_t SampleConverter::waiting() const {
    return swr_ && in_rate_ != rate_.per_second ? swr_get_delay(swr_.get(), rate_.per_second) : 0;
}

void SampleConverter::prepare(const AVFrame& frame) {
    const Layout layout = frame.ch_layout.order == AV_CHANNEL_ORDER_UNSPEC
                              ? Layout(frame.ch_layout.nb_channels)
                              : Layout(frame.ch_layout);
    if (swr_ && in_rate_ == frame.sample_rate && in_format_ == frame.format &&
        in_layout_.same_as(layout.get()))
        return;
    if (swr_ && in_rate_ != rate_.per_second) run(nullptr, 0);
    // FFmpeg 5.1 asks for layouts that aren't const, and only reads them.
    auto* out_layout = const_cast<AVChannelLayout*>(&layout_.get());
    auto* in_layout = const_cast<AVChannelLayout*>(&layout.get());
    SwrContext* made = nullptr;
    int code = swr_alloc_set_opts2(&made, out_layout, AV_SAMPLE_FMT_FLT, rate_.per_second, in_layout,
                                   static_cast<AVSampleFormat>(frame.format), frame.sample_rate, 0, nullptr);
    swr_.reset(made);
    if (code >= 0) code = swr_init(swr_.get());
    if (code < 0) {
        swr_.reset();
        throw Error(Fault::unsupported,
                    "The sound changes to a form that can't be converted: " + meaning(code) + ".");
    }
    in_layout_ = layout;
    in_rate_ = frame.sample_rate;
    in_format_ = frame.format;
}

void SampleConverter::run(const std::uint8_t** in, int count) {
    const auto channels = static_cast<std::size_t>(layout_.channels());
    const std::size_t before = out_.size();
    const int room = swr_get_out_samples(swr_.get(), count);
    if (room <= 0) return;
    out_.resize(before + static_cast<std::size_t>(room) * channels);
    std::uint8_t* into[] = {reinterpret_cast<std::uint8_t*>(out_.data() + before)};
    const int got = swr_convert(swr_.get(), into, room, in, count);
    if (got < 0) throw Error(Fault::internal, "Samples can't be converted: " + meaning(got) + ".");
    out_.resize(before + static_cast<std::size_t>(got) * channels);
    for (std::size_t i = before; i < out_.size(); ++i)
        if (!std::isfinite(out_[i])) out_[i] = 0;
}

} // namespace luft::media
