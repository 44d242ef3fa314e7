#include "bench/speed.h"

#include "bench/groups.h"
#include "bench/place.h"
#include "marks/listen.h"
#include "media/media.h"
#include "media/movie_writer.h"
#include "voice/front.h"
#include "voice/spectrum.h"

#include <time.h>

#include <algorithm>

namespace luft::bench {
namespace {

double processor_seconds() {
    timespec t{};
    ::clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return static_cast<double>(t.tv_sec) + 1e-9 * static_cast<double>(t.tv_nsec);
}

double best_of(int runs, const auto& work) {
    double best = 1e9;
    for (int k = 0; k < runs; ++k) {
        const double before = processor_seconds();
        work();
        best = std::min(best, processor_seconds() - before);
    }
    return best;
}

/// What no analysis can do without.
void floor_of_work(SampleSource& source) {
    voice::Front front(source);
    voice::Spectrum spectrum;
    while (const auto frame = front.next())
        spectrum.measure(*frame);
}

} // namespace

Speed measure_speed(bool with_band, Seconds length, int runs) {
    const Scene scene = long_scene(with_band, length);
    const Place place;
    const auto file = place.path() / "scene.m4a";
    const auto writer =
        media::write_movie(file, {.sample_rate = scene.rate, .channels = scene.channels, .audio_kbps = 160});
    writer->sound(scene.samples);
    writer->finish();
    const auto how = with_band ? marks::Accompaniment::accompanied : marks::Accompaniment::alone;
    const double whole = best_of(runs, [&] {
        const auto source = media::open_sound(open_file(file));
        (void)marks::listen(*source, {.accompaniment = how});
    });
    const double least = best_of(runs, [&] { floor_of_work(*media::open_sound(open_file(file))); });
    return {scene.length().value() / whole, whole / least};
}

} // namespace luft::bench
