#include "desk/rehearsal_sound.h"

#include <cmath>
#include <memory>

namespace luft::desk {

RehearsalSound sound_of(Playing& playing) {
    const auto speed_before = std::make_shared<std::optional<int>>();
    RehearsalSound sound;
    sound.play = [&playing, speed_before](Seconds from, double speed) {
        if (!*speed_before) *speed_before = playing.speed();
        playing.set_loop(std::nullopt);
        playing.set_speed(static_cast<int>(std::lround(speed * 100)));
        playing.play(from);
    };
    sound.pause = [&playing] {
        if (playing.playing()) playing.pause();
    };
    sound.heard = [&playing] { return playing.playing() ? std::optional(playing.position()) : std::nullopt; };
    sound.note = [&playing] {
        return playing.can_play()
                   ? playing.note()
                   : std::string("The recording isn't there, so the rehearsal goes without music.");
    };
    sound.release = [&playing, speed_before] {
        if (playing.playing()) playing.pause();
        if (*speed_before) playing.set_speed(**speed_before);
        speed_before->reset();
    };
    return sound;
}

} // namespace luft::desk
