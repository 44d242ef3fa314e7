// What the coach does to the words under the line. Each is one edit, and throws what Session::edit throws.
#pragma once

#include "desk/work/session.h"

namespace luft::desk {

/// Spreads the piece's words over the notes of the performance that is shown; hand-placed ones stay. Throws
/// Error(bad_request) when the piece has no words, or nothing has been heard to spread them over.
void spread_words(Session& session);

/// Takes over what has been written about the piece. Other words than before are spread at once, where there
/// is something to spread them over; that is an edit of its own.
void set_piece(Session& session, const project::Piece& piece);

/// Where a word may be dragged: between those around it that the coach has placed. Empty for one that isn't
/// there.
Span room_of_word(const profile::Source& source, project::SungWordId id);

/// Puts a word there, as near as it may go; those that the program has put follow.
void move_word(Session& session, project::SungWordId id, Seconds at);

} // namespace luft::desk
