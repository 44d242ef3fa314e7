#include "singer/band.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::singer {
namespace {

using std::numbers::pi;

void broken_chord(std::vector<Tone>& out, const Chord& c, Seconds at, Seconds beat) {
    constexpr int kOrder[] = {0, 2, 1, 2, 3, 2, 1, 2}; // quavers through the chord
    const int quavers = static_cast<int>(std::lround(c.beats * 2));
    const int top = static_cast<int>(c.tones.size()) - 1;
    for (int i = 0; i < quavers; ++i) {
        const auto k = static_cast<std::size_t>(std::min(kOrder[i % 8], top));
        const double accent = i % 4 == 0 ? 0 : -3;
        out.push_back(
            {Instrument::plucked, at + beat * (0.5 * i), beat * 1.2, c.tones[k], Decibels(accent), -0.45});
    }
}

void block_chord(std::vector<Tone>& out, const Chord& c, Seconds at, Seconds beat) {
    for (double b = 0; b < c.beats - 0.01; b += 2)
        for (std::size_t k = 0; k < c.tones.size(); ++k)
            out.push_back({Instrument::struck, at + beat * b + Seconds(0.012 * double(k)),
                           beat * std::min(2.0, c.beats - b) * 0.95, c.tones[k], Decibels(b > 0 ? -2 : 0),
                           0.4});
}

void rhythm(std::vector<Tone>& out, Seconds at, double beats, Seconds beat) {
    for (int b = 0; b < static_cast<int>(std::lround(beats)); ++b) {
        const bool strong = b % 2 == 0;
        out.push_back({strong ? Instrument::low_drum : Instrument::brush, at + beat * double(b), Seconds(0.3),
                       MidiPitch(36), Decibels(strong ? -2 : -12), strong ? 0 : 0.25});
    }
}

struct Levels {
    double voice = 0, band = 0;
};

Levels levels_where_sung(const Stereo& voice, const Stereo& band, SampleRate rate) {
    const auto frame = static_cast<std::size_t>(rate.per_second / 20);
    std::vector<Levels> frames;
    double loudest = 0;
    const auto power = [](const Stereo& s, std::size_t n) {
        double p = 0;
        if (n < s.left.size()) p += double(s.left[n]) * s.left[n];
        if (n < s.right.size()) p += double(s.right[n]) * s.right[n];
        return p;
    };
    for (std::size_t n = 0; n < voice.left.size(); n += frame) {
        Levels l;
        for (std::size_t i = n; i < std::min(n + frame, voice.left.size()); ++i)
            l.voice += power(voice, i), l.band += power(band, i);
        loudest = std::max(loudest, l.voice);
        frames.push_back(l);
    }
    Levels sum;
    for (const Levels& l : frames)
        if (l.voice > loudest * 1e-3) sum.voice += l.voice, sum.band += l.band;
    return sum;
}

} // namespace

std::vector<Tone> accompany(std::span<const Chord> chords, const BandStyle& style) {
    std::vector<Tone> out;
    Seconds at = style.from;
    for (const Chord& c : chords) {
        out.push_back({Instrument::bass, at, style.beat * c.beats * 0.9, c.bass, Decibels(0), 0.1});
        if (style.harmony == Instrument::plucked)
            broken_chord(out, c, at, style.beat);
        else
            block_chord(out, c, at, style.beat);
        if (style.drums) rhythm(out, at, c.beats, style.beat);
        at += style.beat * c.beats;
    }
    return out;
}

Stereo play(std::span<const Tone> tones, Seconds length, SampleRate rate, std::uint64_t seed) {
    Random random(seed);
    const auto samples = static_cast<std::size_t>(std::llround(length.value() * rate.per_second));
    Stereo out{std::vector<float>(samples), std::vector<float>(samples)};
    for (const Tone& t : tones) {
        const auto sound = tone(t.instrument, t.pitch, t.length, rate, random.fork());
        const double angle = (t.pan + 1) * pi / 4, k = amplitude_of(t.level);
        const auto left = static_cast<float>(k * std::cos(angle)),
                   right = static_cast<float>(k * std::sin(angle));
        const auto first = static_cast<std::size_t>(std::llround(t.at.value() * rate.per_second));
        for (std::size_t n = 0; n < sound.size() && first + n < samples; ++n) {
            out.left[first + n] += left * sound[n];
            out.right[first + n] += right * sound[n];
        }
    }
    return out;
}

std::vector<float> mix(const Stereo& voice, const Stereo& band, Decibels voice_over_band, SampleRate rate) {
    const Levels l = levels_where_sung(voice, band, rate);
    const double k = l.band > 0 ? std::sqrt(l.voice / l.band) / amplitude_of(voice_over_band) : 0;
    const std::size_t frames = std::max(voice.left.size(), band.left.size());
    const auto at = [](const std::vector<float>& x, std::size_t n) {
        return n < x.size() ? double(x[n]) : 0.0;
    };
    std::vector<float> out(frames * 2);
    for (std::size_t n = 0; n < frames; ++n) {
        out[2 * n] = static_cast<float>(at(voice.left, n) + k * at(band.left, n));
        out[2 * n + 1] = static_cast<float>(at(voice.right, n) + k * at(band.right, n));
    }
    return out;
}

std::vector<float> mix(std::span<const float> voice, const Stereo& band, Decibels voice_over_band,
                       SampleRate rate) {
    const std::vector<float> side(voice.begin(), voice.end());
    return mix(Stereo{side, side}, band, voice_over_band, rate);
}

} // namespace luft::singer
