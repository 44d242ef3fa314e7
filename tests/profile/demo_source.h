// An invented performance with curves and marks that fit each other, for tests and for looking at pages.
#pragma once

#include "profile/profile.h"

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace luft::profile::demo {

struct Sung {
    double midi;
    double seconds;
};

/// Ten lines of a made-up song, each a list of pitches and lengths.
inline std::vector<std::vector<Sung>> melody() {
    const std::vector<std::vector<Sung>> verse = {
        {{60, .4}, {62, .4}, {64, .4}, {67, .8}, {65, .4}, {64, .4}, {62, 1.3}},
        {{60, .4}, {62, .4}, {64, .4}, {69, .9}, {67, .4}, {64, 1.6}},
        {{64, .3}, {65, .3}, {67, .5}, {69, .5}, {71, .9}, {72, 1.1}, {71, .4}, {69, .4}, {67, 2.2}},
        {{65, .5}, {64, .5}, {62, .5}, {59, .5}, {60, 2.4}},
        {{67, .4}, {69, .4}, {71, .4}, {72, 1.3}, {74, .6}, {72, .5}, {71, .4}, {69, 1.7}},
    };
    auto lines = verse;
    for (auto line : verse) {
        if (line.size() == 8) line.push_back({76, 2.6}); // the last line climbs further
        lines.push_back(line);
    }
    return lines;
}

/// A number that looks random and never changes: 0 to 1.
inline double dice(int n) {
    const double x = std::sin(n * 12.9898) * 43758.5453;
    return x - std::floor(x);
}

inline marks::Note note(int i, Sung s, Seconds start, bool first, bool last) {
    using namespace marks;
    Note n;
    n.span = {start, start + Seconds(s.seconds)};
    const double high = s.midi > 70 ? 14 : 0;
    n.cents = Cents(std::round((dice(i) - 0.5) * 36 + high + (last ? -9 : 0)));
    n.pitch = MidiPitch(s.midi + n.cents.value() / 100);
    n.drift = Cents(std::round((dice(i + 100) - 0.6) * 40));
    if (i % 9 == 3) n.scoop = Cents(70 + 60 * dice(i));
    if (s.seconds >= 0.85)
        n.vibrato =
            Vibrato{Hertz(5.2 + dice(i + 7)), Cents(35 + 45 * dice(i + 3)), 0.62 + 0.35 * dice(i + 5)};
    const auto onset = first ? (dice(i + 11) < .4   ? OnsetKind::breathy
                                : dice(i + 11) < .6 ? OnsetKind::glottal
                                                    : OnsetKind::balanced)
                             : OnsetKind::balanced;
    n.onset = {onset,
               {0.62 + 0.3 * dice(i + 2)},
               onset == OnsetKind::breathy   ? "air for 90 ms before the tone"
               : onset == OnsetKind::glottal ? "full level within 14 ms"
                                             : "rise of 52 ms, no air before it"};
    n.offset = {last && i % 3 == 0 ? OffsetKind::trailing : OffsetKind::clean,
                {0.75},
                last ? "falls off within 60 ms" : ""};
    const bool head = s.midi >= 71;
    n.sung_in = head ? Register::head : Register::chest;
    n.level = Decibels(-22 + (s.midi - 66) * 0.6 + 5 * std::sin(i * 0.5) - (last ? 3 : 0));
    if (s.seconds >= 0.85)
        n.shape = i % 4 == 0 ? LevelShape::swelling : i % 4 == 1 ? LevelShape::fading : LevelShape::steady;
    n.level_change = Decibels(n.shape == LevelShape::fading ? -7 : 0.6);
    if (s.midi < 72) {
        const bool front = i % 3 == 0;
        n.vowel =
            Vowel{Hertz((front ? 420 : 720) * (0.9 + 0.2 * dice(i + 21))),
                  Hertz((front ? 2100 : 1150) * (0.93 + 0.14 * dice(i + 22))), front ? "e" : "\xC9\x91"};
    }
    n.confidence = {0.7 + 0.25 * dice(i + 31)};
    return n;
}

inline void fill_curves(voice::Curves& c, const marks::Note& n, double beginning, int i) {
    const auto first = nearest_frame(n.span.start).value, last = nearest_frame(n.span.end).value;
    const bool head = n.sung_in == marks::Register::head;
    for (auto f = first; f < last; ++f) {
        const double t = (time_of({f}) - n.span.start).value(), length = n.span.length().value();
        double cents = n.cents.value() - (n.scoop ? n.scoop->value() * std::exp(-t / 0.05) : 0);
        if (n.vibrato)
            cents += n.vibrato->extent.value() * std::min(1.0, t / beginning) *
                     std::sin(2 * std::numbers::pi * n.vibrato->rate.value() * t);
        const double midi = std::round(n.pitch.value() - n.cents.value() / 100) + cents / 100;
        const double swell = n.shape == marks::LevelShape::swelling
                                 ? 5 * std::sin(std::numbers::pi * t / length)
                             : n.shape == marks::LevelShape::fading ? -7 * t / length
                                                                    : 0;
        const double level =
            n.level.value() + swell - 8 * std::exp(-t / 0.02) - 8 * std::exp(-(length - t) / 0.03);
        const auto at = static_cast<std::size_t>(f);
        c.f0.set(at, frequency_of(MidiPitch(midi)));
        c.voicing.set(at, Share(0.95));
        c.level.set(at, Decibels(level));
        c.cpp.set(at, Decibels(14 + 0.25 * (level + 22) - (head ? 3 : 0) + 4 * (dice(i + 41) - .5)));
        c.hnr.set(at, Decibels(19 - (head ? 3 : 0) + 3 * dice(i + 42)));
        c.h1h2.set(at, Decibels(3 + (head ? 6 : 0) + 5 * (dice(i + 43) - .5)));
        c.ring.set(at, Decibels(-17 + 0.3 * (level + 22) + 9 * (dice(i + 44) - .5)));
        c.alpha.set(at, Decibels(-9 + 0.2 * (level + 22) + 8 * (dice(i + 45) - .5)));
        c.centroid.set(at, Hertz(900 + 300 * dice(i + 46)));
        c.head_register.set(at, Share(head ? 0.9 : 0.1));
        if (n.vowel) {
            c.f1.set(at, n.vowel->f1);
            c.f2.set(at, n.vowel->f2);
            c.f3.set(at, Hertz(2650 * (0.95 + 0.1 * dice(i + 23)) * (1 + 0.006 * (n.pitch.value() - 65))));
        }
    }
}

/// Everything a performance can have. `verses` repeats the song, for thousands of notes.
inline Source source(int verses = 1) {
    Source s;
    s.vocabulary = vocabulary::default_vocabulary();
    s.piece.title = "The Lantern Road";
    s.piece.writer = "made up for the tests";
    s.performance.id = {7};
    s.performance.label = "A";
    s.performance.performer = "Mara Ellin";
    s.performance.source = "an invented house concert";
    s.performance.permission = "invented";
    const auto add = [&](auto what, project::MarkState state = project::MarkState::proposed) {
        project::Mark mark;
        mark.performance = s.performance.id;
        mark.state = state;
        mark.what = std::move(what);
        s.marks.push_back(std::move(mark));
    };
    std::vector<marks::Note> notes;
    double t = 4.2;
    int i = 0, line_number = 0;
    for (int verse = 0; verse < verses; ++verse)
        for (const auto& line : melody()) {
            const double start = t;
            for (std::size_t k = 0; k < line.size(); ++k, ++i) {
                notes.push_back(note(i, line[k], Seconds(t), k == 0, k + 1 == line.size()));
                t += line[k].seconds;
                if (line_number % 5 == 2 && k == 4) { // a catch breath where the line goes on
                    add(marks::Breath{{Seconds(t + .03), Seconds(t + .29)},
                                      marks::BreathEvidence::heard,
                                      true,
                                      Decibels(19),
                                      {0.81},
                                      "noise under 3 kHz"});
                    t += 0.32;
                } else if (k % 3 == 2) {
                    t += 0.05; // a consonant
                }
            }
            add(marks::Phrase{{Seconds(start), Seconds(t)}, {0.9}, "a rest follows"});
            const bool heard = line_number % 4 != 1;
            add(marks::Breath{
                {Seconds(t + .12), Seconds(t + .12 + (heard ? .48 + .2 * dice(line_number) : .5))},
                heard ? marks::BreathEvidence::heard : marks::BreathEvidence::inferred,
                false,
                heard ? std::optional(Decibels(24 + 6 * dice(line_number + 3))) : std::nullopt,
                {heard ? 0.88 : 0.61},
                "a gap"});
            t += 0.95 + (line_number % 5 == 4 ? 5.5 : 0.4 * dice(line_number));
            ++line_number;
        }
    add(marks::Note{{Seconds(t), Seconds(t + .2)},
                    MidiPitch(90),
                    {},
                    {},
                    {},
                    {},
                    {},
                    {},
                    {},
                    {},
                    Decibels(-60),
                    {},
                    {},
                    {0.2},
                    "barely there"});

    const auto frames = static_cast<std::size_t>((t + 3) / kHop.value());
    auto& c = s.curves;
    for (auto* curve : {&c.level, &c.cpp, &c.hnr, &c.h1h2, &c.ring, &c.alpha})
        *curve = Curve<Decibels>(frames);
    for (auto* curve : {&c.f0, &c.centroid, &c.f1, &c.f2, &c.f3})
        *curve = Curve<Hertz>(frames);
    c.loudness = Curve<Lufs>(frames);
    c.voicing = Curve<Share>(std::vector<float>(frames, 0.02F));
    c.head_register = Curve<Share>(frames);
    for (std::size_t f = 0; f < frames; ++f)
        c.level.set(f, Decibels(-70));
    for (std::size_t k = 0; k < notes.size(); ++k) {
        fill_curves(c, notes[k], k % 4 == 2 ? notes[k].span.length().value() : 0.15, static_cast<int>(k));
        if (k > 0 && notes[k].sung_in != notes[k - 1].sung_in &&
            notes[k].span.start - notes[k - 1].span.end < Seconds(.1)) {
            const bool hole = k % 7 == 3;
            for (int f = -4; hole && f < 4; ++f)
                c.level.set(static_cast<std::size_t>(nearest_frame(notes[k].span.start).value + f),
                            Decibels(-48));
            add(marks::Switch{notes[k].span.start,
                              *notes[k - 1].sung_in,
                              *notes[k].sung_in,
                              false,
                              {0.74},
                              "tilt and pitch"});
        }
        add(notes[k]);
    }
    s.listening = project::Listening{voice::Setting::alone,
                                     Hertz(440.6),
                                     {Lufs(-19.4), LoudnessUnits(7.2), Decibels(-1.3)},
                                     false,
                                     Seconds(t + 3)};
    s.performance.facts.duration = Seconds(t + 3);

    const auto moment = [&](Span span, project::Verdict verdict, std::vector<vocabulary::Tag> shades,
                            std::string remark) {
        project::Moment m;
        m.id = {static_cast<std::int64_t>(s.moments.size()) + 1};
        m.performance = s.performance.id;
        m.span = span;
        m.verdict = verdict;
        m.shades = std::move(shades);
        m.remark = std::move(remark);
        s.moments.push_back(std::move(m));
    };
    moment(notes[12].span, project::Verdict::strength, {{"diction", "clear"}},
           "Every consonant arrives before the beat, so the vowel can sit on it.");
    moment(notes[20].span, project::Verdict::watch, {{"posture", "chin-raised"}},
           "The chin comes up for the top note.");
    moment(notes[30].span, project::Verdict::explain, {{"embellishment", "turn"}, {"resonance", "nasal"}},
           "");
    return s;
}

} // namespace luft::profile::demo
