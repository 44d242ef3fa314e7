// What one key does to the project. Each is one edit with its own undo, and throws what Session::edit throws.
#pragma once

#include "desk/work/session.h"

namespace luft::desk {

/// Where a breath set at a time reaches: the gap between the notes around it, at most a second; else 0.3 s
/// around it.
Span breath_span(const profile::Source& source, Seconds at);

/// What a new moment is about when nothing was dragged: what is selected, else the last three seconds while
/// it plays, else the phrase at the playhead, else two seconds from there.
Span moment_span(const Session& session, Seconds playhead, bool playing);

/// The phrase that a time lies in, or the next one; none when there is none.
const project::Mark* phrase_at(const profile::Source& source, Seconds at);

/// Each selects what it has made or changed.
void set_breath(Session& session, Seconds at);
void set_switch(Session& session, Seconds at);
void make_moment(Session& session, Span span);
/// A stop in the script, about the selected moment or the one that lies there. Throws Error(bad_request)
/// outside the recording.
void make_stop(Session& session, Seconds at);
void split_phrase(Session& session, Seconds at);
/// The selected phrase, or the one at that time, with the one after it.
void join_phrase(Session& session, Seconds at);

/// The selected mark or moment. Do nothing without one.
void set_state(Session& session, project::MarkState state);
void move_mark(Session& session, project::MarkId id, Span span);
void move_moment(Session& session, project::MomentId id, Span span);
void set_verdict(Session& session, project::Verdict verdict);
/// Breath: heard or inferred. Switch: the other direction. Note: the next kind of onset.
void change_kind(Session& session);

/// The mark or moment next to the selection in time, or nearest to the playhead.
Selection neighbour(const Session& session, Seconds playhead, bool forward);

} // namespace luft::desk
