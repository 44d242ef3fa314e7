// Media files in: what is in a file, its sound as a gapless stream, and the picture at a time.
#pragma once

#include "base/bytes.h"
#include "base/rational.h"
#include "base/samples.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace luft::media {

/// Longer recordings are refused: a small file of silence may claim months. Common practice, no source.
inline constexpr Seconds kMostLength{24 * 3600};

struct AudioFacts {
    std::string codec;
    AudioFormat format;
};

struct VideoFacts {
    std::string codec;
    int width = 0;
    int height = 0;      ///< as shown: rotation applied
    Rational frame_rate; ///< frames a second; the average when the rate varies
    bool variable_rate = false;
};

/// What is in a media file. Media time 0 is presentation time 0; for formats whose clock starts anywhere
/// (MPEG transport and program streams, and any file that starts later than 10 minutes) it is the file's
/// first presentation time; in MP3, which counts the encoder's delay as time, it is the first sample after
/// that delay.
struct Facts {
    std::string container;
    Seconds duration;                ///< end of the last stream on the media time line, as the file claims it
    std::optional<AudioFacts> audio; ///< the stream that is listened to (the file's default one)
    std::optional<VideoFacts> video; ///< a moving picture; cover art doesn't count
    /// Set when the file has lost its end: the length that its header announces, where `duration` is what is
    /// there. Ogg, AVI, bare AAC and MPEG streams announce none, so that nothing shows what they lack.
    std::optional<Seconds> cut_off_from;
};

/// Opens the bytes as media. Network and playlist formats are off. Throws Error(unreadable) with the reason
/// in one line (empty file, not media, broken header), Error(unsupported) when no decoder is at hand and for
/// more than kMostLength.
Facts probe(std::unique_ptr<ByteSource> bytes);

/// The sound as a stream (see SampleSource for its promises). Throws as probe; Error(unreadable) when the
/// file has no sound. Damage inside the file is skipped as silence of the same length; a file without a
/// single good packet throws on the first read. Gaps are filled up to half an hour in all; a longer leap of
/// the file's clock is not filled. After kMostLength reading throws Error(unsupported).
std::unique_ptr<SampleSource> open_sound(std::unique_ptr<ByteSource> bytes);

/// A sound that can be heard from any place.
class PlayableSound : public SampleSource {
  public:
    /// The next block begins at exactly this sample; below 0 is 0, and past the end `read` gives nothing.
    /// Quick (about a second is decoded) where the format can seek and its clock starts at 0; else the file
    /// is decoded from its start. The samples stand where a straight run puts them, and of lossy codecs they
    /// are nearly the same. Not so after a place where the file's own clock was set anew (chained Ogg
    /// streams): what is played from there may be another place. Throws as `read`.
    virtual void go_to(std::int64_t sample) = 0;
};

/// As open_sound.
std::unique_ptr<PlayableSound> open_playable_sound(std::unique_ptr<ByteSource> bytes);

/// One picture, 8-bit RGB, rows top to bottom without padding.
struct Picture {
    int width = 0;
    int height = 0;
    Seconds time; ///< its own presentation time
    std::vector<std::uint8_t> rgb;
};

class MoviePicture; // media/movie_picture.h

/// What the numbers of a picture mean as colours: code points of ITU-T H.273, 2 for 'not said'. The default
/// is ITU-R BT.601 as SMPTE 170M has it.
struct ColourCode {
    int primaries = 6, transfer = 6, matrix = 6;
};

/// The pictures of a video, at any time.
class PictureSource {
  public:
    virtual ~PictureSource() = default;
    /// The picture that is on the screen at `t`: the last one presented at or before it (the first one when
    /// `t` is earlier). Quick when times go forward in small steps. `most_width` scales down, keeping the
    /// shape.
    virtual Picture at(Seconds t, int most_width = 0) = 0;
    /// The same for a movie of that size (even numbers): scaled up or down to fit, in its shape, with black
    /// beside it. Made once while the same picture is on the screen.
    virtual MoviePicture movie_at(Seconds t, int width, int height) = 0;
    /// What movie pictures of it are to be labelled with.
    virtual ColourCode colours() = 0;
    /// Movie pictures are made for a movie that is labelled so: its matrix (ITU-R BT.601, BT.709 …) instead
    /// of the video's own. Primaries and transfer stay as they are.
    virtual void show_in(ColourCode colours) = 0;
};

/// Throws as probe; Error(unreadable) when the file has no moving picture.
std::unique_ptr<PictureSource> open_pictures(std::unique_ptr<ByteSource> bytes);

} // namespace luft::media
