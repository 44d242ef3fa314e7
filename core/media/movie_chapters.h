// Chapters into a movie that is about to be written.
#pragma once

#include "media/handles.h"
#include "media/movie_writer.h"

#include <vector>

namespace luft::media {

/// Before the header is written. Containers without chapters leave them out.
void add_chapters(AVFormatContext& output, const std::vector<MovieChapter>& chapters);

} // namespace luft::media
