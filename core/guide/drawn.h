// What was drawn, as a movie picture.
#pragma once

#include "media/movie_picture.h"
#include "sheet/canvas.h"

namespace luft::guide {

/// The canvas' pixels; its width and height must be even.
media::MoviePicture drawn(sheet::Canvas& canvas);

} // namespace luft::guide
