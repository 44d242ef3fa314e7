// Where the voice changes register.
#pragma once

#include "marks/marks.h"
#include "voice/curves.h"

#include <vector>

namespace luft::marks {

/// A switch stands where the register curve changes inside a phrase and stays changed for 0.2 s or more;
/// close to the seam of two notes it stands on the seam. Changes between phrases aren't marked. Confidence is
/// fitted to songs of the project's singer: of those given 0.7 to 0.82, four in five are right, dry and in
/// rooms; among instruments, where it stays under 0.4, about one in four.
std::vector<Switch> find_switches(const voice::Curves& curves, const std::vector<Note>& notes,
                                  const std::vector<Phrase>& phrases, voice::Setting setting);

/// More switches than one in 2.5 s of singing aren't a singer's: then the model has followed vowels or
/// instruments, and the performance is better called one register (common practice, no source).
bool too_many(const std::vector<Switch>& switches, const std::vector<Note>& notes);

} // namespace luft::marks
