// Where a sound has come down after a seek.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace luft::media {

/// The frames' stamps tell, each rounded to the container's clock and now and then off. Two things make a
/// sample of it: the median of many stamps, and the length of the frames. Where all are of one length, as in
/// most codecs, they stand on a grid whose place the file's first frames show. All counts are samples of one
/// channel.
class Landing {
  public:
    /// A frame of the file's beginning, in a straight run: its length, and the sample after its end.
    void begin(std::int64_t length, std::int64_t end);
    /// How many such frames are needed: the first may have lost its start to the encoder's delay.
    static constexpr int kBeginning = 3;
    [[nodiscard]] bool knows_beginning() const { return frames_ >= kBeginning; }

    /// A seek: the stamps seen before say no more.
    void lift();
    /// How far a frame's stamp lies after the place where the frames so far put it.
    void see(std::int64_t off) { offs_.push_back(off); }

    /// Where the sample that is taken for `next` really stands; none when no stamp was seen or the stamps are
    /// `rounding` or more off. `tick` is one unit of the container's clock.
    [[nodiscard]] std::optional<std::int64_t> settled(std::int64_t next, std::int64_t tick,
                                                      std::int64_t rounding) const;

  private:
    int frames_ = 0;
    std::int64_t length_ = 0; ///< of every frame so far; 0 when they differ
    std::int64_t grid_ = 0;   ///< the end of one of them
    std::vector<std::int64_t> offs_;
};

} // namespace luft::media
