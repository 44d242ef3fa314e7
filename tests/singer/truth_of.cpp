#include "singer/truth_of.h"

#include "singer/loudness_plan.h"
#include "singer/noises.h"
#include "singer/pitch_plan.h"

#include <algorithm>
#include <cmath>

namespace luft::singer {
namespace {

constexpr double kVoiced = 0.0316; // 30 dB under the full tone

/// RMS over 40 ms around a time.
Decibels level_at(std::span<const float> voice, double t, SampleRate rate) {
    const auto n = static_cast<std::int64_t>(voice.size());
    const auto middle = std::llround(t * rate.per_second), half = std::llround(0.02 * rate.per_second);
    const auto a = std::clamp<std::int64_t>(middle - half, 0, n),
               b = std::clamp<std::int64_t>(middle + half, a, n);
    double power = 0;
    for (auto i = a; i < b; ++i)
        power += double(voice[static_cast<std::size_t>(i)]) * voice[static_cast<std::size_t>(i)];
    return power_level(power / std::max<double>(1, static_cast<double>(b - a)));
}

void write_curves(Truth& out, const std::vector<Control>& controls, std::span<const float> voice,
                  SampleRate rate) {
    const auto frames = static_cast<std::size_t>(std::floor(out.duration / kHop + 1e-9)) + 1;
    out.f0 = Curve<Hertz>(frames), out.level = Curve<Decibels>(frames), out.head = Curve<Share>(frames);
    out.f1 = Curve<Hertz>(frames), out.f2 = Curve<Hertz>(frames), out.f3 = Curve<Hertz>(frames);
    for (std::size_t i = 0; i < frames; ++i) {
        const Seconds t = time_of({static_cast<std::int64_t>(i)});
        const auto k = static_cast<std::size_t>(std::llround(t / kControlStep));
        if (k >= controls.size() || controls[k].voicing < kVoiced) continue;
        const Control& c = controls[k];
        out.f0.set(i, frequency_of(MidiPitch(c.pitch)));
        out.head.set(i, Share(c.head));
        out.f1.set(i, c.formants[0].frequency);
        out.f2.set(i, c.formants[1].frequency);
        out.f3.set(i, c.formants[2].frequency);
        const Decibels level = level_at(voice, t.value(), rate);
        if (level.value() > -90) out.level.set(i, level);
    }
}

Decibels middle_level(const Curve<Decibels>& level, Span s) {
    const Seconds part = s.length() * 0.25;
    std::vector<float> values;
    for (const float v : level.within({s.start + part, s.end - part}))
        if (!std::isnan(v)) values.push_back(v);
    if (values.empty()) return level.at(s.middle()).value_or(Decibels(-90));
    const auto mid = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), mid, values.end());
    return Decibels(static_cast<double>(*mid));
}

/// The part of a note in which its envelope is within 30 dB of the full tone.
Span sounding(const PlacedNote& n) {
    Span s = n.voiced;
    while (s.start < s.end && voicing_of(n, s.start.value()) < kVoiced)
        s.start += kControlStep;
    while (s.start < s.end && voicing_of(n, s.end.value()) < kVoiced)
        s.end -= kControlStep;
    return s;
}

TrueNote true_note(const PlacedNote& p, const Singer& singer, const Curve<Decibels>& level) {
    const SungNote& n = p.note;
    TrueNote t;
    t.span = sounding(p);
    const MidiPitch tuning = pitch_of(singer.tuning) - MidiPitch(69);
    t.pitch = n.pitch + tuning + MidiPitch(n.off.value() / 100);
    t.off = n.off, t.drift = n.drift, t.scoop = n.scoop;
    t.vibrato = n.vibrato;
    const bool hissed = n.consonant != Consonant::none && !is_voiced(n.consonant);
    if (!p.joined && !hissed)
        t.onset = n.start == Start::glottal   ? marks::OnsetKind::glottal
                  : n.start == Start::breathy ? marks::OnsetKind::breathy
                                              : marks::OnsetKind::balanced;
    if (!p.joins && !p.cut) t.offset = n.end;
    t.vowel = n.vowel;
    t.formants = formants_of(n, singer);
    t.sung_in = n.sung_in;
    t.level = middle_level(level, t.span);
    t.path = n.path;
    t.consonant = n.consonant;
    t.phrase = p.phrase;
    t.syllable = n.syllable;
    return t;
}

} // namespace

Truth truth_of(const Layout& layout, const Singer& singer, const std::vector<Control>& controls,
               std::span<const float> voice, SampleRate rate) {
    Truth out;
    out.duration = Seconds(static_cast<double>(voice.size()) / rate.per_second);
    out.tuning = singer.tuning;
    write_curves(out, controls, voice, rate);
    for (const PlacedNote& n : layout.notes) {
        out.notes.push_back(true_note(n, singer, out.level));
        if (n.note.consonant != Consonant::none && !is_voiced(n.note.consonant))
            out.consonants.push_back({{n.whole.start, n.voiced.start}, n.note.consonant});
    }
    for (const PlacedBreath& b : layout.breaths)
        out.breaths.push_back({b.span, !b.breath.silent, b.inside_phrase,
                               singer.usual_level + b.breath.level.value_or(singer.breath_level)});
    for (std::size_t p = 0; p < layout.words.size(); ++p) {
        const auto in = [p](const TrueNote& n) { return n.phrase == p; };
        const auto first = std::find_if(out.notes.begin(), out.notes.end(), in);
        const auto last = std::find_if(out.notes.rbegin(), out.notes.rend(), in);
        if (first == out.notes.end()) continue;
        out.phrases.push_back({{first->span.start, last->span.end}, layout.words[p]});
    }
    for (const PlacedSwitch& s : switches_of(layout))
        out.switches.push_back({s.time, s.from, s.to, s.joined, s.broken});
    return out;
}

} // namespace luft::singer
