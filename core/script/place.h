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
/// an explanation, is compared with another performance, or finds no rest.
std::optional<Seconds> aside_for(const Source& source, const project::Moment& moment);

struct Replay {
    Span span;
    double speed = 1;
};

/// What is worth hearing again after the talk: a short moment to watch, at half speed where it passes
/// quickly; or any short moment when the halt comes well after it, or another performance is heard before.
std::optional<Replay> replay_for(const Source& source, const project::Moment& moment, Seconds stop);

/// What is heard of another performance beside the moment: its counterpart, with a little before and after
/// it. None when it has none, or the project no longer has that performance.
std::optional<project::Quote> quote_for(const Source& source, const project::Moment& moment);

} // namespace luft::script
