// The same singing heard through different noise: what differs then is the ear's error, not the singer.
#pragma once

#include "compare/heard.h"
#include "singer/room.h"

namespace luft::compare::test {

struct Surroundings {
    std::uint64_t seed = 1;
    std::optional<Decibels> hiss = {};            ///< below full scale
    std::optional<Seconds> room = {};             ///< its reverberation time
    std::optional<Decibels> voice_over_band = {}; ///< with another band for each seed
};

inline Side heard_in(const singer::Rendition& sung, const Surroundings& where) {
    std::vector<float> samples = sung.samples;
    int channels = 1;
    if (where.voice_over_band) {
        samples = singer::mix(sung.samples, scenes::small_band(sung, {}, where.seed), *where.voice_over_band,
                              sung.rate);
        channels = 2;
    }
    if (where.room) samples = singer::in_room(samples, sung.rate, {.decay = *where.room, .seed = where.seed});
    singer::Random random(where.seed * 77 + 3);
    if (where.hiss)
        for (float& x : samples)
            x += static_cast<float>(amplitude_of(*where.hiss) * random.bell());
    singer::MemorySource source(std::move(samples), sung.rate, channels);
    Side side = side_of(marks::listen(source));
    side.harmony = hear_harmony(source, side.tuning);
    return side;
}

} // namespace luft::compare::test
