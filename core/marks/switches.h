// Where the voice changes register.
#pragma once

#include "marks/marks.h"
#include "voice/curves.h"

#include <vector>

namespace luft::marks {

/// A switch stands where the register curve changes inside a phrase and stays changed for 0.12 s or more;
/// close to the seam of two notes it stands on the seam. Changes between phrases aren't marked.
std::vector<Switch> find_switches(const voice::Curves& curves, const std::vector<Note>& notes,
                                  const std::vector<Phrase>& phrases);

} // namespace luft::marks
