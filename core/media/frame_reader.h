// The decoded frames of one stream, in order.
#pragma once

#include "media/container.h"
#include "media/handles.h"

#include <memory>
#include <string>

namespace luft::media {

class FrameReader {
  public:
    /// Throws Error(unsupported) when the decoder won't open.
    FrameReader(std::unique_ptr<Container> container, int stream);

    [[nodiscard]] const Container& container() const { return *container_; }
    [[nodiscard]] AVStream& stream() const { return *stream_; }

    /// The next frame; null at the end. Packets that can't be decoded are stepped over. Throws what the
    /// ByteSource throws.
    Frame next();

    /// To the last key picture at or before the stamp; false when the format can't, and then the reader is of
    /// no more use.
    bool seek(std::int64_t stamp);
    /// As Container::seek to a time.
    bool seek(Seconds t);

    /// FFmpeg's reason why the last bad packet couldn't be decoded; empty when there was none.
    [[nodiscard]] const std::string& last_damage() const { return damage_; }

  private:
    void feed();

    std::unique_ptr<Container> container_;
    AVStream* stream_;
    Codec codec_;
    Packet packet_ = new_packet();
    bool draining_ = false;
    std::string damage_;
};

} // namespace luft::media
