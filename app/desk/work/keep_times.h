// What a rehearsal leaves in the project.
#pragma once

#include "desk/work/rehearsal.h"
#include "desk/work/session.h"

namespace luft::desk {

/// Stores the measured talk times as one edit with its own undo; those of talks that are gone from the script
/// are left out, and without any there is no edit. How many were stored. Throws what Session::edit throws.
std::size_t store_measured(Session& session, const Rehearsal::Measured& measured);

} // namespace luft::desk
