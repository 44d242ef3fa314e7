// One recorded talk on its way into its file.
#pragma once

#include "base/units.h"
#include "media/movie_writer.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>

namespace luft::desk {

/// Writes beside the final name: until `keep` the former recording stays, and a take that is dropped before
/// leaves nothing behind. One channel, 24-bit WAV. All calls throw Error(cannot_write) with a sentence when
/// the folder can't be written or the disk is full.
class Take {
  public:
    static constexpr SampleRate kRate{48000};

    /// Makes the folder when it isn't there. Two takes of one talk can lie side by side until one is kept:
    /// the second is told so.
    explicit Take(std::filesystem::path file, bool second = false);
    Take(const Take&) = delete;
    Take& operator=(const Take&) = delete;
    Take(Take&&) = default;
    Take& operator=(Take&&) = delete;
    ~Take();

    /// Full scale = 1; what lies beyond is cut off there.
    void add(std::span<const float> samples);
    /// Exactly what the file will hold.
    [[nodiscard]] std::int64_t samples() const { return samples_; }
    [[nodiscard]] bool second() const { return second_; }
    [[nodiscard]] Seconds length() const { return Seconds(static_cast<double>(samples_) / kRate.per_second); }

    /// Puts it in the former one's place. Throws Error(bad_request) when nothing was recorded.
    void keep();

  private:
    std::filesystem::path file_;
    std::filesystem::path beside_; ///< where it is written
    bool second_ = false;
    std::unique_ptr<media::MovieWriter> writer_;
    std::int64_t samples_ = 0;
};

} // namespace luft::desk
