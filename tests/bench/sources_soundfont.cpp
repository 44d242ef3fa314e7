// A sampled choir and solo voices of a General MIDI soundfont sing invented tunes. They know their notes, not
// their vowels or how they begin, and never breathe. A sampled voice swells in and rings on.
#include "bench/soundfont.h"
#include "bench/tune.h"

namespace luft::bench {
namespace {

constexpr SampleRate kRate{44100};
constexpr std::array kVoices{52, 53}; // choir aahs, voice oohs, counted from 0

Scene sung_by_samples(std::uint64_t seed) {
    const Tune tune = tune_for(seed, seed % 2 == 0 ? 50 : 58, seed % 2 == 0 ? 67 : 76);
    const Seconds length = tune.notes.back().span.end + Seconds(1);
    std::vector<MidiNote> notes;
    for (const TuneNote& n : tune.notes)
        notes.push_back({0, n.key, 100, n.span});
    const std::size_t voice = seed / 2 % kVoices.size();
    const singer::Stereo played = play_sampled({{0, kVoices[voice], 0, Cents(0)}}, notes, length, kRate);
    Scene s;
    s.samples.resize(played.left.size());
    for (std::size_t i = 0; i < s.samples.size(); ++i)
        s.samples[i] = (played.left[i] + played.right[i]) / 2;
    s.truth = truth_of(tune, s.length(), {.settles = 0.35, .leaves = 0.95, .rings_on = Seconds(0.5)});
    if (voice == 0) s.truth.notes.reset(); // the choir swells in: its starts can't be placed within 50 ms
    return s;
}

} // namespace

Group sampled_voice_group() {
    return {"sampled voice", "choir aahs and voice oohs of a General MIDI soundfont; they never breathe",
            Kind::solo, sung_by_samples};
}

} // namespace luft::bench
