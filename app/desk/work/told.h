// What a mark or a moment is, in a few lines for the pointer and the side panel.
#pragma once

#include "profile/profile.h"

#include <string>

namespace luft::desk {

/// "Breath, heard", "F#4 +12 cents", "Switch from chest to head": one line, without the time.
std::string title_of(const profile::Source& source, const project::Mark& mark);

/// "Proposed, quite sure (0.87)", "Kept", "Set and kept by you".
std::string state_of(const project::Mark& mark);
std::string state_of(const project::Moment& moment);

/// Everything measured about a mark, a line each: "Vibrato: 5.4 Hz, ±38 cents". Values that couldn't be had
/// are left out.
std::vector<std::string> facts_of(const project::Mark& mark);

/// What was measured over a span: pitch range, level, loudness, vibrato, breath and register, a line each.
std::vector<std::string> facts_of(const profile::Source& source, Span span);

/// What is heard beside a moment: "marnik, 0:15.1 to 0:16.7".
std::string told(const std::vector<project::Performance>& performances, const project::Quote& beside);

/// Title, time, state and evidence, for the pointer.
std::string told(const profile::Source& source, const project::Mark& mark);
std::string told(const profile::Source& source, const project::Moment& moment);

} // namespace luft::desk
