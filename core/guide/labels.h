// What is written into the picture: programme time, and which stop it is.
#pragma once

#include "media/movie_picture.h"
#include "script/cue_sheet.h"

#include <cstdint>
#include <map>

namespace luft::guide {

class Labels {
  public:
    Labels(const script::CueSheet& sheet, int width, int height);

    /// Programme time as SMPTE timecode, at the bottom on the right.
    void write_timecode(media::MoviePicture& picture, std::int64_t frame);
    /// The talk's number and title, or the quote's title, on a card, at the top on the left.
    void lay_slate(media::MoviePicture& picture, const script::Segment& segment) const;

  private:
    const media::MoviePicture& figure(char c);

    Rational rate_;
    bool drop_frame_;
    int width_, height_;
    double unit_;                                 ///< pixels; the picture is 720 high
    std::map<char, media::MoviePicture> figures_; ///< all of one size, drawn when first needed
};

} // namespace luft::guide
