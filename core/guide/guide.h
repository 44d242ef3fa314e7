// The guide movie: the whole programme to watch and to cut along, made of the recording and its cue sheet.
#pragma once

#include "base/bytes.h"
#include "base/progress.h"
#include "media/movie_writer.h"
#include "profile/profile.h"
#include "script/cue_sheet.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace luft::guide {

/// Another performance that the programme quotes.
struct Quoted {
    project::PerformanceId performance;
    std::function<std::unique_ptr<ByteSource>()> open_recording;
    std::function<profile::Source()> song; ///< asked for where its recording has no picture
};

/// What a guide is made from. All of it is only read.
struct Material {
    const script::Source& source;
    const script::CueSheet& sheet;
    const profile::Source& song; ///< what the sheet is drawn from where the recording has no picture
    std::function<std::unique_ptr<ByteSource>()> open_recording;
    std::filesystem::path voices = {}; ///< the coach's recorded talk, see script/voices.h; empty = left out
    std::vector<Quoted> quoted = {};   ///< every performance that the sheet quotes
};

struct Options {
    bool slate = false;    ///< a stop's number and title over the picture that stands
    bool timecode = false; ///< programme time in the picture
    int width = 0;         ///< even; 0 = the video's own size, at most 1280 x 720, or upright, never enlarged
    int height = 0;        ///< even; 0 with it
};

struct Report {
    Rational length; ///< seconds
    int width = 0, height = 0;
    media::MovieCodecs codecs;
    std::vector<std::string> not_used; ///< recorded talk left out or broken off: a sentence each, and why
};

/// Writes the guide; the file's ending decides between MP4, Matroska and QuickTime (mp4, mkv, mov).
///
/// Programme frame k lies at k / frame rate exactly, and shows the picture that is on the recording's screen
/// in the middle of the frame's time: stamps that a container has rounded, and frames of varying length, then
/// give the right one. Sound is counted in whole samples from each segment's own start, so nothing drifts.
///
/// - play: picture and sound of the recording, each from exactly `media_start`;
/// - talk: the picture at `media_start` stands; silence, or the recorded talk;
/// - replay: at its speed, the sound at constant pitch (to within what signal/stretch.h says); its last
///   frame, which may be filled in part only, shows no picture from behind its span either;
/// - quote: the other performance's picture and sound as those of a replay, from exactly `media_start` of its
///   own recording: fitted into the guide's size, at its own level; its sheet where it has no picture;
/// - aside: the music under it is ducked (duck.h), the recorded talk laid over it.
///
/// Sound is stereo: a single channel on both sides, more than two mixed down by ITU-R BS.775.
/// Throws Error(bad_request) for a programme without a frame, for an odd size and for a quote that `quoted`
/// lacks, as media::write_movie and media::open_sound, and Stopped; then nothing is left behind. Every
/// quoted recording is opened before the first frame is made.
Report write_guide(const Material& material, const std::filesystem::path& file, const Options& options,
                   const Progress& progress = {});

} // namespace luft::guide
