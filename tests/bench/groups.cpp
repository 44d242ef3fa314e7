#include "bench/groups.h"

#include "bench/bands.h"
#include "bench/lossy.h"
#include "bench/songs.h"
#include "bench/soundfont.h"
#include "bench/truth.h"
#include "bench/tune.h"
#include "scenes/tones.h"
#include "singer/room.h"

#include <numbers>

namespace luft::bench {
namespace {

using singer::Random;
using singer::Stereo;

constexpr SampleRate kRate{44100};

struct Sung {
    InventedSong plan;
    singer::Rendition sung;
    Truth truth;
};

Sung sing(std::uint64_t seed, Form form = Form::plain, Seconds length = Seconds(22)) {
    Sung s{invent(seed, form, length), {}, {}};
    s.sung = singer::render(s.plan.song, s.plan.singer, kRate);
    s.truth = truth_of(s.sung.truth);
    return s;
}

Scene scene_of(const Sung& s, std::vector<float> samples, int channels = 1) {
    Scene out{"", "", std::move(samples), channels, kRate, s.truth};
    std::vector<float> one(out.samples.size() / static_cast<std::size_t>(channels));
    for (std::size_t i = 0; i < one.size(); ++i)
        one[i] = channels == 1 ? out.samples[i] : (out.samples[2 * i] + out.samples[2 * i + 1]) / 2;
    find_audible(*out.truth.breaths, s.sung.samples, one, kRate);
    return out;
}

/// White noise of that level (RMS, dB below full scale).
void add_hiss(std::vector<float>& x, double db, std::uint64_t seed) {
    scenes::add(x, scenes::noise(amplitude_of(Decibels(db)),
                                 Seconds(double(x.size()) / kRate.per_second + 0.1), kRate, seed));
}

/// Mains hum: 50 Hz and its overtones, each 4 dB under the one before.
void add_hum(std::vector<float>& x, double db) {
    for (int k = 1; k <= 6; ++k)
        scenes::add(x, scenes::sine(Hertz(50.0 * k),
                                    std::numbers::sqrt2 * amplitude_of(Decibels(db - 4 * (k - 1))),
                                    Seconds(double(x.size()) / kRate.per_second + 0.1), kRate, 40 * k));
}

double pick(std::uint64_t seed, std::initializer_list<double> of) {
    return std::data(of)[seed % of.size()];
}

Scene alone(std::uint64_t seed, Form form = Form::plain) {
    const Sung s = sing(seed, form);
    auto x = s.sung.samples;
    add_hiss(x, pick(seed, {-80, -74, -68}), seed); // a quiet place is never without a sound
    return scene_of(s, std::move(x));
}

Scene in_a_room(std::uint64_t seed) {
    const Sung s = sing(seed);
    const singer::Room room{.decay = Seconds(pick(seed, {0.4, 1.0, 1.8})),
                            .wet = Decibels(pick(seed / 3, {-14, -10, -7})),
                            .floor = Decibels(-70),
                            .seed = seed};
    return scene_of(s, singer::in_room(s.sung.samples, kRate, room));
}

Scene in_noise(std::uint64_t seed) {
    const Sung s = sing(seed);
    auto x = s.sung.samples;
    add_hiss(x, pick(seed, {-60, -52, -44}), seed);
    if (seed % 2 == 0) add_hum(x, pick(seed / 2, {-52, -42}));
    return scene_of(s, std::move(x));
}

Scene after_coding(std::uint64_t seed) {
    Scene s = alone(seed);
    s.samples = through_aac(s.samples, 1, kRate, static_cast<int>(pick(seed, {24, 32, 48})));
    return s;
}

/// Voices of uneven seeds stand in a small room of their own, as in most mixes.
Stereo voice_of_mix(const Sung& s, std::uint64_t seed) {
    if (seed % 2 == 0) return {s.sung.samples, s.sung.samples};
    singer::Room room{.decay = Seconds(0.9), .wet = Decibels(-16), .floor = Decibels(-90), .seed = seed};
    Stereo out{singer::in_room(s.sung.samples, kRate, room), {}};
    room.seed = seed + 1;
    out.right = singer::in_room(s.sung.samples, kRate, room);
    return out;
}

struct Backing {
    double voice_over_band = 0; ///< dB
    bool stereo = true;
    bool sampled = false; ///< a soundfont's instruments instead of ours
};

Scene over_a_band(const Sung& s, std::uint64_t seed, const Backing& how) {
    const Seconds length = s.sung.truth.duration;
    const auto tones = arrange(s.plan, seed, length, s.truth.instrumental);
    const Stereo band =
        how.sampled ? play_sampled(tones, length, kRate, seed) : play(tones, length, kRate, seed);
    auto x = singer::mix(voice_of_mix(s, seed), band, Decibels(how.voice_over_band), kRate);
    if (how.stereo) return scene_of(s, std::move(x), 2);
    std::vector<float> one(x.size() / 2);
    for (std::size_t i = 0; i < one.size(); ++i)
        one[i] = (x[2 * i] + x[2 * i + 1]) / 2;
    return scene_of(s, std::move(one));
}

Group band_group(const std::string& name, const Backing& how) {
    return {name,
            std::string(how.stereo ? "stereo" : "mono") + ", the voice in the middle, " +
                (how.sampled ? "a band of a General MIDI soundfont's instruments" : "an invented band"),
            Kind::among_instruments,
            [how](std::uint64_t seed) { return over_a_band(sing(seed), seed, how); }};
}

Scene instrumental(std::uint64_t seed) {
    return over_a_band(sing(seed, Form::instrumental), seed, {.voice_over_band = 3, .stereo = seed % 2 == 0});
}

} // namespace

std::vector<Group> own_groups() {
    return {
        {"alone", "dry voice over a noise floor of -80 to -68 dB", Kind::solo,
         [](auto s) { return alone(s); }},
        {"room", "reverberation times of 0.4, 1.0 and 1.8 s", Kind::solo, in_a_room},
        {"noise", "hiss of -60 to -44 dB, mains hum under every other", Kind::solo, in_noise},
        {"lossy", "through AAC at 24, 32 and 48 kbit/s", Kind::solo, after_coding},
        {"two registers", "dry; every singer uses chest and head", Kind::solo,
         [](auto s) { return alone(s, Form::two_registers); }},
        band_group("band +12", {.voice_over_band = 12}),
        band_group("band +6", {.voice_over_band = 6}),
        band_group("band 0", {.voice_over_band = 0}),
        band_group("band +6 mono", {.voice_over_band = 6, .stereo = false}),
        band_group("band 0 mono", {.voice_over_band = 0, .stereo = false}),
        {"instrumental",
         "+3 dB; introduction and interlude, half of them led by a bowed string; half of them mono",
         Kind::among_instruments, instrumental},
    };
}

std::vector<Group> independent_groups() {
    return {festival_group(), sampled_voice_group(),
            band_group("sampled band +6", {.voice_over_band = 6, .sampled = true}),
            band_group("sampled band 0", {.voice_over_band = 0, .sampled = true})};
}

Scene long_scene(bool with_band, Seconds length) {
    const Sung s = sing(kHeldOutSeeds, Form::plain, length);
    return with_band ? over_a_band(s, kHeldOutSeeds, {.voice_over_band = 6}) : scene_of(s, s.sung.samples);
}

} // namespace luft::bench
