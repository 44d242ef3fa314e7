#include "bench/bands.h"

namespace luft::bench {
namespace {

using namespace singer;

double between(Random& r, double from, double to) {
    return from + (to - from) * r.uniform();
}

Chord triad(const Key& key, int root, double low_bass, double low_tones) {
    const auto lifted = [](double pitch, double from) {
        while (pitch < from)
            pitch += 12;
        while (pitch >= from + 12)
            pitch -= 12;
        return MidiPitch(pitch);
    };
    Chord c;
    c.bass = lifted(key.pitch(root), low_bass);
    for (const int k : {0, 2, 4})
        c.tones.push_back(lifted(key.pitch(root + k), low_tones));
    std::ranges::sort(c.tones);
    return c;
}

/// Roots of a progression: it begins on the tonic and moves by chance.
std::vector<Chord> progression(Random& r, const Key& key, Seconds beat, Seconds length) {
    constexpr std::array kRoots{0, 3, 4, 5, 1, 2};
    const double tones = between(r, 50, 58);
    std::vector<Chord> out;
    std::array<int, 4> round{0};
    for (std::size_t k = 1; k < round.size(); ++k)
        round[k] = kRoots[static_cast<std::size_t>(r.uniform() * 6)];
    while (beat * (4.0 * static_cast<double>(out.size())) < length)
        out.push_back(triad(key, round[out.size() % round.size()], 33, tones));
    return out;
}

void add_pads(std::vector<Tone>& to, const std::vector<Chord>& chords, Seconds beat, double pan) {
    Seconds at{0};
    for (const Chord& c : chords) {
        for (const MidiPitch p : c.tones)
            to.push_back({Instrument::pad, at, beat * c.beats, p, Decibels(-4), pan});
        at += beat * c.beats;
    }
}

void add_lead(std::vector<Tone>& to, Random& r, const Key& key, Seconds beat, Span s) {
    const double pan = between(r, -0.15, 0.15);
    int degree = 4 + static_cast<int>(r.uniform() * 5);
    for (Seconds at = s.start + Seconds(0.3); at + beat < s.end;) {
        const Seconds length = beat * (r.uniform() < 0.3 ? 2.0 : 1.0);
        const MidiPitch pitch(key.pitch(degree) + (key.lowest < 48 ? 12 : 0));
        to.push_back({Instrument::bowed, at, length * 0.95, pitch, Decibels(2), pan});
        at += length;
        degree = std::clamp(degree + (r.uniform() < 0.5 ? 1 : -1) * (r.uniform() < 0.3 ? 2 : 1), 0, 12);
    }
}

} // namespace

std::vector<Tone> arrange(const InventedSong& song, std::uint64_t seed, Seconds length,
                          const std::vector<Span>& instrumental) {
    Random r(seed * 9'176'213 + 5);
    const Seconds beat(between(r, 0.42, 0.8));
    const auto chords = progression(r, song.key, beat, length);
    const bool struck = r.uniform() < 0.5;
    const double with_pad = r.uniform();
    std::vector<Tone> tones = accompany(chords, {.harmony = struck ? Instrument::struck : Instrument::plucked,
                                                 .drums = r.uniform() < 0.7,
                                                 .beat = beat});
    const bool bass = r.uniform() < 0.85;
    const double width = between(r, 0.3, 1.6); // of where the instruments stand
    std::erase_if(tones, [&](const Tone& t) {
        const bool harmony = t.instrument == Instrument::struck || t.instrument == Instrument::plucked;
        return (harmony && with_pad > 0.9) || (!bass && t.instrument == Instrument::bass);
    });
    if (with_pad > 0.6) add_pads(tones, chords, beat, between(r, -0.5, 0.5));
    for (Tone& t : tones)
        t.pan = std::clamp(t.pan * width, -1.0, 1.0);
    for (const Span& s : seed / 2 % 2 == 0 ? instrumental : std::vector<Span>{})
        add_lead(tones, r, song.key, beat, s);
    const MidiPitch tuning = pitch_of(song.singer.tuning) - MidiPitch(69);
    for (Tone& t : tones)
        t.pitch += tuning;
    return tones;
}

} // namespace luft::bench
