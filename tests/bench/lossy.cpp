#include "bench/lossy.h"

#include "bench/place.h"
#include "media/media.h"
#include "media/movie_writer.h"

namespace luft::bench {

std::vector<float> through_aac(std::span<const float> samples, int channels, SampleRate rate, int kbps) {
    const Place place;
    const auto file = place.path() / "coded.m4a";
    const auto writer =
        media::write_movie(file, {.sample_rate = rate, .channels = channels, .audio_kbps = kbps});
    writer->sound(samples);
    writer->finish();
    return read_sound(file).samples;
}

} // namespace luft::bench
