// The sound of a rehearsal, as its page asks for it.
#pragma once

#include "desk/playing.h"

#include <functional>
#include <optional>
#include <string>

namespace luft::desk {

struct RehearsalSound {
    std::function<void(Seconds from, double speed)> play; ///< anew from there, 0.25 to 1
    std::function<void()> pause;
    std::function<std::optional<Seconds>()> heard; ///< where it is; none while nothing sounds
    std::function<std::string()> note;             ///< why nothing is to be heard; empty when all is well
    std::function<void()> release;                 ///< the rehearsal is over: as before it
};

/// Plays with the window's own player, which must outlive it. The loop is let go; `release` brings the speed
/// of before back.
RehearsalSound sound_of(Playing& playing);

} // namespace luft::desk
