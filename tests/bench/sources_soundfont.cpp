// A sampled choir and solo voices of a General MIDI soundfont sing invented tunes. They know their notes, not
// their vowels or how they begin, and never breathe. A sampled voice swells in and rings on.
#include "bench/soundfont.h"
#include "bench/tune.h"

namespace luft::bench {
namespace {

constexpr SampleRate kRate{44100};
constexpr int kChoirAahs = 52, kVoiceOohs = 53; // counted from 0

} // namespace

Scene sung_by_samples(const Tune& tune, bool choir) {
    const Seconds length = tune.notes.back().span.end + Seconds(1);
    std::vector<MidiNote> notes;
    for (const TuneNote& n : tune.notes)
        notes.push_back({0, n.key, 100, n.span});
    const singer::Stereo played =
        play_sampled({{0, choir ? kChoirAahs : kVoiceOohs, 0, Cents(0)}}, notes, length, kRate);
    Scene s;
    s.samples.resize(played.left.size());
    for (std::size_t i = 0; i < s.samples.size(); ++i)
        s.samples[i] = (played.left[i] + played.right[i]) / 2;
    s.truth = truth_of(tune, s.length(), {.settles = 0.35, .leaves = 0.95, .rings_on = Seconds(0.5)});
    return s;
}

Group sampled_voice_group() {
    return {"sampled voice", "choir aahs and voice oohs of a General MIDI soundfont; they never breathe",
            Kind::solo, [](std::uint64_t seed) {
                const bool choir = seed / 2 % 2 == 0;
                Scene s =
                    sung_by_samples(tune_for(seed, seed % 2 == 0 ? 50 : 58, seed % 2 == 0 ? 67 : 76), choir);
                if (choir) s.truth.notes.reset(); // it swells in: its starts can't be placed within 50 ms
                return s;
            }};
}

} // namespace luft::bench
