#include "make/piece.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::sample {
namespace {

using namespace luft::singer;
using enum Vowel;
using C = Consonant;

struct Syllable {
    const char* text; ///< a leading hyphen goes on with the word before
    Vowel vowel;
    Consonant consonant;
    int degree; ///< of the major scale, 1 = tonic, 8 = its octave
    double beats;
};

struct Words {
    const char* text;
    std::vector<Syllable> syllables;
    double pause;
};

double semitones(int degree) {
    constexpr int kMajor[] = {0, 2, 4, 5, 7, 9, 11};
    return 12 * ((degree - 1) / 7) + kMajor[(degree - 1) % 7];
}

std::vector<Words> text() {
    return {
        {"Over water boats come home,",
         {{"O", o, C::none, 3, 1.5},
          {"-ver", e, C::none, 2, 0.5},
          {"wa", a, C::none, 1, 1},
          {"-ter", e, C::t, 3, 1},
          {"boats", o, C::none, 5, 1},
          {"come", a, C::k, 6, 1},
          {"home", o, C::h, 5, 1.5}},
         0.5},
        {"evening in a coat of foam;",
         {{"eve", i, C::none, 6, 1.5},
          {"-ning", i, C::n, 5, 0.5},
          {"in", i, C::none, 4, 1},
          {"a", a, C::none, 3, 1},
          {"coat", o, C::k, 2, 0.5},
          {"of", o, C::none, 3, 0.5},
          {"foam", o, C::f, 2, 2}},
         1},
        {"one long moon above the bay",
         {{"one", u, C::none, 3, 1},
          {"long", o, C::l, 5, 1},
          {"moon", u, C::m, 8, 1.5},
          {"a", a, C::none, 7, 0.5},
          {"-bove", o, C::none, 6, 1},
          {"the", e, C::none, 5, 0.5},
          {"bay", e, C::none, 6, 2}},
         0.5},
        {"and the wind has gone away.",
         {{"and", a, C::none, 5, 0.5},
          {"the", e, C::none, 5, 0.5},
          {"wind", i, C::none, 4, 1},
          {"has", a, C::h, 3, 1},
          {"gone", o, C::k, 2, 1},
          {"a", a, C::none, 2, 1},
          {"-way", e, C::none, 1, 2}},
         1},
        {"All the ropes are lying slow,",
         {{"All", o, C::none, 3, 1.5},
          {"the", e, C::none, 2, 0.5},
          {"ropes", o, C::none, 1, 1},
          {"are", a, C::none, 3, 1},
          {"ly", a, C::l, 5, 1},
          {"-ing", i, C::none, 6, 1},
          {"slow", o, C::s, 5, 1.5}},
         0.5},
        {"every oar is laid below;",
         {{"eve", e, C::none, 6, 1.5},
          {"-ry", i, C::none, 5, 0.5},
          {"oar", o, C::none, 4, 1},
          {"is", i, C::none, 3, 1},
          {"laid", e, C::l, 2, 0.5},
          {"be", i, C::none, 3, 0.5},
          {"-low", o, C::l, 5, 2}},
         1},
        {"up the hill the windows shine,",
         {{"up", a, C::none, 5, 1},
          {"the", e, C::none, 8, 1},
          {"hill", i, C::h, 9, 1.5},
          {"the", e, C::none, 8, 0.5},
          {"win", i, C::none, 6, 1},
          {"-dows", o, C::none, 5, 0.5},
          {"shine", a, C::sh, 8, 2}},
         0.5},
        {"and the nearest one is mine.",
         {{"and", a, C::none, 5, 0.5},
          {"the", e, C::none, 6, 0.5},
          {"near", i, C::n, 5, 1},
          {"-est", e, C::none, 3, 1},
          {"one", u, C::none, 2, 1},
          {"is", i, C::none, 2, 1},
          {"mine", a, C::m, 1, 4}},
         0},
    };
}

Seconds length(double beats, const Frame& frame) {
    return frame.beat * beats;
}

/// A pause: the breath ends just before the next line begins.
void put_pause(std::vector<Event>& to, Seconds pause, const std::optional<singer::Breath>& breath) {
    constexpr Seconds kBefore{0.05};
    if (!breath) {
        to.push_back(Rest{pause});
        return;
    }
    singer::Breath b = *breath;
    b.length = std::min(b.length, pause - kBefore * 1.4);
    to.push_back(Rest{pause - b.length - kBefore});
    to.push_back(b);
    to.push_back(Rest{kBefore});
}

std::size_t place_of(const Line& line, std::size_t index) {
    std::size_t at = 0;
    for (; at < line.events.size(); ++at)
        if (std::holds_alternative<SungNote>(line.events[at]) && index-- == 0) break;
    return at;
}

/// A chord by the degree of its root, close above E3.
Chord chord(const Frame& frame, int degree, double beats) {
    Chord c;
    c.beats = beats;
    double bass = frame.tonic.value() + semitones(degree);
    while (bass >= 45)
        bass -= 12;
    c.bass = MidiPitch(bass);
    for (const int step : {0, 2, 4}) {
        double p = frame.tonic.value() + semitones(degree + step);
        while (p >= 64)
            p -= 12;
        while (p < 52)
            p += 12;
        c.tones.push_back(MidiPitch(p));
    }
    std::sort(c.tones.begin(), c.tones.end());
    c.tones.push_back(c.tones.front() + MidiPitch(12));
    return c;
}

} // namespace

std::vector<Line> plain_lines(const Frame& frame) {
    std::vector<Line> out;
    for (const Words& w : text()) {
        Line line;
        line.words = w.text;
        line.pause = w.pause;
        if (w.pause > 0) line.breath = singer::Breath{Seconds(0.45)};
        for (std::size_t k = 0; k < w.syllables.size(); ++k) {
            const Syllable& s = w.syllables[k];
            SungNote n;
            n.length = length(s.beats, frame);
            n.pitch = frame.tonic + MidiPitch(semitones(s.degree));
            n.vowel = s.vowel, n.consonant = s.consonant, n.syllable = s.text;
            n.start = k == 0 ? Start::balanced : Start::legato;
            // Every line swells a little towards its middle.
            n.level =
                Decibels(2.5 * std::sin(std::numbers::pi * double(k) / double(w.syllables.size() - 1)) - 1);
            line.events.push_back(n);
        }
        out.push_back(std::move(line));
    }
    return out;
}

SungNote& note(Line& line, std::size_t index) {
    return std::get<SungNote>(line.events.at(place_of(line, index)));
}

void breathe_after(Line& line, std::size_t index, double beats, const singer::Breath& breath,
                   const Frame& frame) {
    const std::size_t at = place_of(line, index);
    std::get<SungNote>(line.events.at(at)).length -= length(beats, frame);
    std::vector<Event> pause;
    put_pause(pause, length(beats, frame), breath);
    line.events.insert(line.events.begin() + static_cast<std::ptrdiff_t>(at) + 1, pause.begin(), pause.end());
}

void turn(Line& line, std::size_t index, double above, double below, const Frame& frame) {
    const std::size_t at = place_of(line, index);
    const auto main = std::get<SungNote>(line.events.at(at));
    const Seconds quick = length(0.22, frame);
    SungNote first = main;
    first.length = length(0.5, frame);
    first.vibrato.reset();
    first.end = marks::OffsetKind::clean;
    first.path = {};
    std::vector<Event> notes{first};
    SungNote step = first;
    step.start = Start::legato, step.consonant = Consonant::none, step.syllable = "-";
    step.length = quick;
    for (const double by : {above, 0.0, -below}) {
        step.pitch = main.pitch + MidiPitch(by);
        notes.push_back(step);
    }
    SungNote last = main;
    last.start = Start::legato, last.consonant = Consonant::none, last.syllable = "-";
    last.length = main.length - first.length - quick * 3;
    notes.push_back(last);
    line.events.erase(line.events.begin() + static_cast<std::ptrdiff_t>(at));
    line.events.insert(line.events.begin() + static_cast<std::ptrdiff_t>(at), notes.begin(), notes.end());
}

Song whole(std::vector<Line> lines, const Frame& frame, const singer::Breath& first_breath) {
    Song song;
    bool open = false; // the last phrase goes on
    for (std::size_t k = 0; k < lines.size(); ++k) {
        Line& line = lines[k];
        if (!open) song.phrases.emplace_back();
        singer::Phrase& phrase = song.phrases.back();
        if (k == 0) put_pause(phrase.events, length(kIntroBeats, frame), first_breath);
        if (line.goes_on) std::get<SungNote>(line.events.back()).length += length(line.pause, frame);
        phrase.events.insert(phrase.events.end(), line.events.begin(), line.events.end());
        phrase.words += (open ? " " : "") + line.words;
        open = line.goes_on;
        if (open) continue;
        const double interlude = k + 1 == lines.size() / 2 ? kInterludeBeats : 0;
        put_pause(phrase.events, length(line.pause + interlude, frame), line.breath);
    }
    return song;
}

std::vector<Chord> chords(const Frame& frame) {
    constexpr std::pair<int, double> kPlan[] = {
        {1, 4}, {4, 2}, {5, 2},                                                         // intro
        {1, 4}, {1, 4}, {4, 4}, {5, 4}, {6, 4}, {4, 4}, {2, 2}, {5, 2}, {1, 4},         // first verse
        {4, 4}, {5, 4},                                                                 // interlude
        {1, 4}, {1, 4}, {4, 4}, {5, 4}, {6, 2}, {5, 2}, {4, 4}, {1, 2}, {5, 2}, {1, 4}, // second verse
        {4, 2}, {1, 2}, {1, 4},                                                         // ending
    };
    std::vector<Chord> out;
    for (const auto& [degree, beats] : kPlan)
        out.push_back(chord(frame, degree, beats));
    return out;
}

} // namespace luft::sample
