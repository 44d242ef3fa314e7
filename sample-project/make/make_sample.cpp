#include "make/make_sample.h"

#include "base/write_file.h"
#include "make/scene.h"
#include "make/truth_json.h"
#include "media/movie_writer.h"

#include <algorithm>

namespace luft::sample {

std::filesystem::path movie_file(const Performance& p) {
    return std::filesystem::path("media") / (p.name + "." + p.ending);
}

std::filesystem::path truth_file(const Performance& p) {
    return std::filesystem::path("truth") / (p.name + ".json");
}

void make_performance(const Performance& p, const std::filesystem::path& folder) {
    std::filesystem::create_directories(folder / "media");
    std::filesystem::create_directories(folder / "truth");
    const Sound sound = sound_of(p);
    write_file(folder / truth_file(p), truth_json(p, sound));

    media::MovieFormat format;
    format.width = Scene::kWidth;
    format.height = Scene::kHeight;
    format.frame_rate = p.frame_rate;
    format.sample_rate = kRate;
    const auto movie = media::write_movie(folder / movie_file(p), format);
    const Scene scene(p, sound.truth);
    const std::span<const float> samples(sound.samples);
    const auto frames = static_cast<std::int64_t>(samples.size() / 2);
    std::int64_t written = 0;
    for (std::int64_t n = 0; written < frames; ++n) {
        const Rational shown = Rational(n) / p.frame_rate, gone = Rational(n + 1) / p.frame_rate;
        movie->picture(scene.at(Seconds(shown.as_double())));
        const std::int64_t until = std::min(frames, (gone * Rational(kRate.per_second)).floor());
        movie->sound(samples.subspan(static_cast<std::size_t>(2 * written),
                                     static_cast<std::size_t>(2 * (until - written))));
        written = until;
    }
    movie->finish();
}

} // namespace luft::sample
