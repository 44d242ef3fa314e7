#include "bench/soundfont.h"

#include "bench/place.h"

#include <algorithm>
#include <cmath>

namespace luft::bench {
namespace {

using singer::Instrument;

constexpr const char* kSoundfont = "/usr/share/sounds/sf2/TimGM6mb.sf2"; // of the package timgm6mb-soundfont
constexpr int kDrums = 9, kBassDrum = 36, kSnareDrum = 38, kClosedHat = 42;

/// General MIDI programs that can stand for it, counted from 0.
std::vector<int> programs_of(Instrument i) {
    switch (i) {
    case Instrument::plucked:
        return {24, 25, 26, 46}; // guitars, harp
    case Instrument::struck:
        return {0, 2, 4, 11}; // pianos, vibraphone
    case Instrument::bass:
        return {32, 33, 35}; // basses
    case Instrument::pad:
        return {48, 50, 16, 89, 21}; // strings, organ, warm pad, accordion
    case Instrument::bowed:
        return {40, 73, 65, 71}; // violin, flute, alto saxophone, clarinet
    case Instrument::low_drum:
    case Instrument::brush:
        break;
    }
    return {0};
}

MidiNote note_of(const singer::Tone& t, std::uint64_t seed) {
    const int velocity = std::clamp(static_cast<int>(92 * std::pow(10.0, t.level.value() / 40)), 1, 127);
    MidiNote n{static_cast<int>(t.instrument),
               static_cast<int>(std::floor(t.pitch.value() + 0.5)),
               velocity,
               {t.at, t.at + t.length}};
    if (t.instrument == Instrument::low_drum)
        n.channel = kDrums, n.key = kBassDrum;
    else if (t.instrument == Instrument::brush)
        n.channel = kDrums, n.key = seed % 2 == 0 ? kSnareDrum : kClosedHat;
    return n;
}

} // namespace

singer::Stereo play_sampled(const std::vector<MidiChannel>& channels, const std::vector<MidiNote>& notes,
                            Seconds length, SampleRate rate) {
    const Place place;
    const auto score = place.path() / "score.mid", sound = place.path() / "score.wav";
    write_midi(score, channels, notes);
    run("fluidsynth -ni -q -R 0 -C 0 -g 0.5 -r " + std::to_string(rate.per_second) + " -T wav -F '" +
        sound.string() + "' " + kSoundfont + " '" + score.string() + "'");
    const Sound played = read_sound(sound);
    const auto frames = static_cast<std::size_t>(std::llround(length.value() * rate.per_second));
    singer::Stereo out{std::vector<float>(frames), std::vector<float>(frames)};
    for (std::size_t i = 0; i < frames && 2 * i + 1 < played.samples.size(); ++i)
        out.left[i] = played.samples[2 * i], out.right[i] = played.samples[2 * i + 1];
    return out;
}

singer::Stereo play_sampled(std::span<const singer::Tone> tones, Seconds length, SampleRate rate,
                            std::uint64_t seed) {
    std::vector<MidiChannel> channels;
    std::vector<MidiNote> notes;
    for (const singer::Tone& t : tones) {
        MidiNote n = note_of(t, seed);
        notes.push_back(n);
        if (std::ranges::any_of(channels, [&](const MidiChannel& c) { return c.channel == n.channel; }))
            continue;
        const auto programs = programs_of(t.instrument);
        const bool drums = n.channel == kDrums;
        channels.push_back({n.channel, drums ? 0 : programs[seed / 2 % programs.size()], t.pan,
                            drums ? Cents(0) : Cents(100 * (t.pitch.value() - n.key))});
    }
    return play_sampled(channels, notes, length, rate);
}

} // namespace luft::bench
