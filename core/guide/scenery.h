// What is seen: the video, or the sheet where there is none.
#pragma once

#include "base/rational.h"
#include "media/media.h"
#include "media/movie_picture.h"
#include "profile/profile.h"

#include <memory>
#include <optional>

namespace luft::guide {

class Scenery {
  public:
    virtual ~Scenery() = default;
    /// The picture at a time of the recording.
    virtual media::MoviePicture at(Rational media_time) = 0;
    [[nodiscard]] virtual media::ColourCode colours() = 0;
};

/// The video's own pictures, fitted into that size; with `colours`, in those rather than in its own. Throws
/// as media::open_pictures.
std::unique_ptr<Scenery> video_scenery(std::unique_ptr<ByteSource> recording, int width, int height,
                                       std::optional<media::ColourCode> colours = std::nullopt);

/// The marked-up sheet on light paper: the row that sounds with the playhead over it, and under it, paler,
/// the next one. The source must outlive it.
std::unique_ptr<Scenery> sheet_scenery(const profile::Source& song, int width, int height);

} // namespace luft::guide
