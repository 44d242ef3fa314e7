// An opened media file: its streams, its clock, its packets.
#pragma once

#include "base/bytes.h"
#include "base/units.h"
#include "media/byte_io.h"
#include "media/handles.h"

#include <memory>
#include <optional>
#include <string>

namespace luft::media {

/// The largest picture let in: 8K UHD, the largest raster of ITU-R BT.2020.
inline constexpr int kMostPixels = 7680 * 4320;

/// A later start than this is taken for a clock that starts anywhere, not for a late start. Common practice,
/// no source.
inline constexpr Seconds kMostLateStart{600};

class Container {
  public:
    /// Throws Error(unreadable) with the reason.
    explicit Container(std::shared_ptr<ByteSource> bytes);

    [[nodiscard]] AVFormatContext& format() const { return *input_; }
    [[nodiscard]] AVStream& stream(int index) const { return *input_->streams[index]; }
    [[nodiscard]] std::string name() const { return bytes_->name(); }

    /// The stream that is listened to; none when there is no sound. Throws Error(unsupported) when there is
    /// sound but no decoder for it.
    [[nodiscard]] std::optional<int> sound_stream() const;
    /// The moving picture; cover art, chapter pictures and stills don't count. Throws like `sound_stream`.
    [[nodiscard]] std::optional<int> picture_stream() const;

    /// The container's clock at media time 0, in microseconds: see Facts.
    [[nodiscard]] std::int64_t origin() const { return origin_; }
    /// Whether that clock starts anywhere, and so may leap.
    [[nodiscard]] bool starts_anywhere() const;
    /// A time stamp of a stream as media time; none for AV_NOPTS_VALUE and for absurd ones.
    [[nodiscard]] std::optional<Seconds> media_time(const AVStream& stream, std::int64_t stamp) const;

    /// The end of the last stream, or of one, as the file claims it; none when it doesn't say.
    [[nodiscard]] std::optional<Seconds> claimed_end() const;
    [[nodiscard]] std::optional<Seconds> claimed_end(const AVStream& stream) const;

    /// Reads only this stream from now on.
    void select(int stream);
    /// The next packet; false at the end. Damage is stepped over. Throws what the ByteSource throws.
    bool read(AVPacket& packet);
    /// To the last key picture at or before the stamp; false when the format can't.
    bool seek(const AVStream& stream, std::int64_t stamp);
    /// To a place from which all streams can be read, at or before the media time: for files whose index
    /// knows the pictures only. False when the format can't.
    bool seek(Seconds t);

  private:
    void open();
    std::int64_t find_origin() const;

    std::shared_ptr<ByteSource> bytes_;
    std::unique_ptr<ByteIo> io_; // before the context that reads through it
    InputContext input_;
    std::int64_t origin_ = 0;
};

} // namespace luft::media
