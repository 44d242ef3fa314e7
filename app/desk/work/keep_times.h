// What a rehearsal leaves in the project.
#pragma once

#include "desk/work/rehearsal.h"
#include "desk/work/session.h"

namespace luft::desk {

/// What was measured of talks whose words are still those that were spoken: a rehearsal can be left, and the
/// script changed, before its times are kept.
Rehearsal::Measured still_spoken(const Session& session, const Rehearsal& rehearsal);

/// Stores the measured talk times as one edit with its own undo; those of talks that are gone from the script
/// are left out, and without any there is no edit. How many were stored. Throws what Session::edit throws.
std::size_t store_measured(Session& session, const Rehearsal::Measured& measured);

} // namespace luft::desk
