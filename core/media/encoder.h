// One encoder: frames in, packets out.
#pragma once

#include "base/rational.h"
#include "media/handles.h"
#include "media/movie_writer.h"

#include <functional>
#include <span>
#include <vector>

namespace luft::media {

/// Takes a finished packet, its times in `time_base`.
using PacketSink = std::function<void(AVPacket& packet, AVRational time_base)>;

/// Pictures to H.264, or MPEG-4 part 2 where the FFmpeg build has no H.264 encoder.
class PictureEncoder {
  public:
    /// Throws Error(unsupported) when the container takes neither, Error(bad_request) on an odd size.
    PictureEncoder(const MovieFormat& format, const AVOutputFormat& container);

    void put(const Picture& picture, const PacketSink& sink);
    void put(const MoviePicture& picture, const PacketSink& sink);
    void finish(const PacketSink& sink);
    [[nodiscard]] const AVCodecContext& codec() const { return *codec_; }

  private:
    Codec codec_;
    Scaler scaler_;
    Frame frame_;
    std::int64_t next_ = 0;
};

/// Whether the container's sound encoder takes that rate. Throws Error(unsupported) when it has none.
bool takes_rate(const AVOutputFormat& container, SampleRate rate);

/// Samples to the sound codec of the container: PCM and FLAC at 24 bits, AAC in the others.
class SoundEncoder {
  public:
    /// Throws Error(unsupported) when there is no encoder for this container, rate and number of channels.
    SoundEncoder(const MovieFormat& format, const AVOutputFormat& container);

    void put(std::span<const float> samples, const PacketSink& sink);
    void finish(const PacketSink& sink);
    [[nodiscard]] const AVCodecContext& codec() const { return *codec_; }

  private:
    void encode(std::span<const float> samples, const PacketSink& sink);

    Codec codec_;
    Resampler converter_; ///< sample format only
    std::vector<float> waiting_;
    std::int64_t next_ = 0;
    std::size_t block_ = 0; ///< samples of one channel that the encoder takes at a time
};

} // namespace luft::media
