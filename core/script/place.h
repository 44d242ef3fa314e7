// Where a first draft halts, and whether a remark can be spoken over a rest instead.
#pragma once

#include "script/cue_sheet.h"

#include <optional>

namespace luft::script {

/// Where to halt for a moment: at the end of the phrase that it lies in; at its own end when nobody sings
/// there, or no phrase ends within a while of it (then at the end of the note). A place too near to
/// `last_stop` moves on to a later phrase end, if there is one soon enough.
Seconds stop_for(const Source& source, const project::Moment& moment, std::optional<Seconds> last_stop);

/// Start of a rest soon after the moment in which its remark fits; none when it has no remark, is more than
/// an explanation, or finds no rest.
std::optional<Seconds> aside_for(const Source& source, const project::Moment& moment);

struct Replay {
    Span span;
    double speed = 1;
};

/// What is worth hearing again after the talk: a short moment to watch, at half speed where it passes
/// quickly; or any moment when the halt comes well after it.
std::optional<Replay> replay_for(const Source& source, const project::Moment& moment, Seconds stop);

} // namespace luft::script
