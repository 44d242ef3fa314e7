// Media files out: pictures and sound into one movie file.
#pragma once

#include "base/rational.h"
#include "base/units.h"
#include "media/media.h"
#include "media/movie_picture.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace luft::media {

/// A stretch of a movie with a title; exact times.
struct MovieChapter {
    Rational start, end;
    std::string title;
};

struct MovieFormat {
    int width = 0; ///< even; 0 = sound only
    int height = 0;
    Rational frame_rate{25};
    SampleRate sample_rate{48000};
    int channels = 2;
    int video_kbps = 200;
    int audio_kbps = 96;
    bool reproducible = true; ///< one thread and no dates, so that the same input gives the same bytes
    /// A movie to work by: quickly made, at a constant quality whatever it takes (`video_kbps` doesn't
    /// count).
    bool quick = false;
    ColourCode colours = {};                 ///< of movie pictures; others are always made ITU-R BT.601
    std::vector<MovieChapter> chapters = {}; ///< where the container has them: MP4, MOV, Matroska
};

struct MovieCodecs {
    std::string picture; ///< "H.264"; empty without pictures
    std::string sound;   ///< "AAC"
};

/// Writes beside the final name and renames at `finish`; a writer that is dropped before leaves nothing
/// behind. Codecs: H.264 and AAC where the FFmpeg build has them, else MPEG-4 part 2 and the best sound
/// encoder there is. All calls throw Error(cannot_write) or Error(unsupported); Error(busy) while another
/// program writes the same file.
class MovieWriter {
  public:
    virtual ~MovieWriter() = default;
    /// Pictures come in order, one per frame of `frame_rate`; size as in the format.
    virtual void picture(const Picture& picture) = 0;
    virtual void picture(const MoviePicture& picture) = 0;
    /// Interleaved samples, full scale = 1; any number at a time.
    virtual void sound(std::span<const float> samples) = 0;
    virtual void finish() = 0;
    [[nodiscard]] virtual MovieCodecs codecs() const = 0;
};

/// The container follows the file's ending (mp4, m4a, mkv, mov, wav, flac).
std::unique_ptr<MovieWriter> write_movie(const std::filesystem::path& file, const MovieFormat& format);

/// `wanted` where the sound encoder for that ending takes it, else 48 kHz. Throws Error(unsupported).
SampleRate movie_rate(const std::filesystem::path& file, SampleRate wanted);

} // namespace luft::media
