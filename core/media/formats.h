// Which of FFmpeg's file formats are let in.
#pragma once

#include "media/handles.h"

#include <string>

namespace luft::media {

/// Why files of this format aren't opened, as the end of the sentence "'song.x' is …"; empty when they are.
/// Kept out: everything that names other files or machines (playlists, manifests, session descriptions,
/// scripts), devices, still pictures, captions, raw data without a header, and scores that would have to be
/// played by a synthesizer.
std::string why_refused(const AVInputFormat& format);

/// The names of all formats let in, comma-separated: a demuxer that opens another one is held to them too.
std::string allowed_formats();

} // namespace luft::media
