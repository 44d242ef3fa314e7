#include "bench/load/material.h"
#include "media/movie_writer.h"
#include "scenes/songs.h"

namespace luft::load {

void sing(const std::filesystem::path& file, Seconds at_least) {
    const auto writer = media::write_movie(file, {.sample_rate = {44100}, .channels = 1});
    Seconds sung;
    for (std::uint64_t seed = 1; sung < at_least; ++seed) {
        const singer::Rendition song =
            scenes::sing({.voice = seed % 2 ? singer::VoiceType::tenor : singer::VoiceType::soprano,
                          .seed = seed,
                          .two_registers = seed % 3 == 0});
        writer->sound(song.samples);
        sung += song.truth.duration;
    }
    writer->finish();
}

} // namespace luft::load
