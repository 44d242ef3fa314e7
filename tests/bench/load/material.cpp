#include "bench/load/material.h"

#include "base/text.h"
#include "project/spread_words.h"
#include "singer/random.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>

namespace luft::load {
namespace {

constexpr int kNotesAPhrase = 8;
constexpr double kMarksAPhrase = kNotesAPhrase + 2.25; // a breath and the phrase; every fourth has a switch
constexpr std::array<int, 8> kSteps{0, 2, 4, 5, 7, 9, 7, 4};

std::size_t frames_of(Seconds length) {
    return static_cast<std::size_t>(std::llround(length / kHop)) + 1;
}

/// Empty curves of that many frames.
voice::Curves empty_curves(std::size_t n) {
    voice::Curves c;
    c.f0 = c.centroid = c.f1 = c.f2 = c.f3 = Curve<Hertz>(n);
    c.voicing = c.head_register = Curve<Share>(n);
    c.loudness = Curve<Lufs>(n);
    c.level = c.cpp = c.hnr = c.h1h2 = c.ring = c.alpha = Curve<Decibels>(n);
    return c;
}

/// Plausible values under a note, with a little swing, as a voice has.
void fill_curves(voice::Curves& c, const marks::Note& note) {
    const auto first = static_cast<std::size_t>(nearest_frame(note.span.start).value);
    const auto last = static_cast<std::size_t>(nearest_frame(note.span.end).value);
    for (std::size_t i = first; i < std::min(last, c.frames()); ++i) {
        const double swing = std::sin(static_cast<double>(i) * 0.35);
        c.f0.set(i, frequency_of(MidiPitch(note.pitch.value() + 0.3 * swing)));
        c.voicing.set(i, Share(0.97));
        c.loudness.set(i, Lufs(-20 + swing));
        c.level.set(i, Decibels(note.level.value() + swing));
        c.cpp.set(i, Decibels(18 + 3 * swing));
        c.hnr.set(i, Decibels(22 + 3 * swing));
        c.h1h2.set(i, Decibels(2 + 3 * swing));
        c.ring.set(i, Decibels(-14 + 2 * swing));
        c.alpha.set(i, Decibels(-8 + 2 * swing));
        c.centroid.set(i, Hertz(900 + 120 * swing));
        c.f1.set(i, note.vowel->f1);
        c.f2.set(i, note.vowel->f2);
        c.f3.set(i, Hertz(2600));
        c.head_register.set(i, Share(*note.sung_in == marks::Register::head ? 0.9 : 0.1));
    }
}

marks::Note note_of(Span span, int step, int low, singer::Random& random) {
    marks::Note note;
    note.span = span;
    note.pitch = MidiPitch(low + step + 0.1 * random.bell());
    note.cents = Cents(10 * random.bell());
    note.drift = Cents(6 * random.bell());
    if (random.uniform() < 0.2) note.scoop = Cents(60 + 40 * random.uniform());
    if (random.uniform() < 0.3)
        note.vibrato = marks::Vibrato{Hertz(5 + random.uniform()), Cents(40 + 30 * random.uniform()), 0.8};
    note.onset = {static_cast<marks::OnsetKind>(static_cast<int>(3 * random.uniform())),
                  {0.5 + 0.5 * random.uniform()},
                  "made up"};
    note.offset = {static_cast<marks::OffsetKind>(static_cast<int>(3 * random.uniform())), {0.8}, "made up"};
    note.vowel = marks::Vowel{Hertz(400 + 300 * random.uniform()), Hertz(1000 + 900 * random.uniform()), "a"};
    note.sung_in = step >= 7 ? marks::Register::head : marks::Register::chest;
    note.level = Decibels(-24 + 4 * random.bell());
    note.confidence = {0.5 + 0.5 * random.uniform()};
    note.evidence = "pitch held for " + fixed(span.length().value(), 2) + " s";
    return note;
}

} // namespace

marks::Analysis analysis_of(const Size& size) {
    marks::Analysis a;
    singer::Random random(size.seed);
    a.duration = size.length;
    a.tuning = Hertz(440);
    a.one_register = false;
    a.loudness = {Lufs(-18), LoudnessUnits(6), Decibels(-1)};
    a.curves = empty_curves(frames_of(size.length));
    const int phrases = std::max(1, static_cast<int>(std::lround(size.marks / kMarksAPhrase)));
    const Seconds each = size.length / phrases;
    for (int p = 0; p < phrases; ++p) {
        const Seconds from = each * p;
        marks::Breath breath;
        breath.span = {from + each * 0.02, from + each * 0.13};
        breath.evidence_kind = p % 3 ? marks::BreathEvidence::heard : marks::BreathEvidence::inferred;
        breath.confidence = {0.5 + 0.5 * random.uniform()};
        breath.evidence = "a rush of air";
        a.breaths.push_back(breath);
        const Span sung{from + each * 0.15, from + each * 0.98};
        a.phrases.push_back({.span = sung, .confidence = {0.9}, .evidence = "between two breaths"});
        const Seconds note = sung.length() / kNotesAPhrase;
        for (int k = 0; k < kNotesAPhrase; ++k) {
            a.notes.push_back(note_of({sung.start + note * k, sung.start + note * (k + 0.97)},
                                      kSteps[static_cast<std::size_t>(k)], 50 + p % 5, random));
            fill_curves(a.curves, a.notes.back());
        }
        if (p % 4 == 0) {
            marks::Switch change;
            change.time = sung.start + note * 4;
            change.confidence = {0.8};
            change.evidence = "the second partial takes over";
            a.switches.push_back(change);
        }
    }
    return a;
}

std::vector<project::Moment> moments_of(const Size& size, const marks::Analysis& analysis,
                                        project::PerformanceId performance) {
    const std::array<vocabulary::Tag, 4> tags{
        {{"onset", "glottal"}, {"onset", "balanced"}, {"breath", "audible"}, {"dynamics", "swell"}}};
    std::vector<project::Moment> moments;
    const auto many = std::min<std::size_t>(static_cast<std::size_t>(size.moments), analysis.phrases.size());
    for (std::size_t i = 0; i < many; ++i) {
        const auto& phrase = analysis.phrases[i * analysis.phrases.size() / many];
        project::Moment moment;
        moment.performance = performance;
        moment.span = phrase.span;
        moment.verdict = static_cast<project::Verdict>(i % 3);
        moment.remark = "Listen to how line " + std::to_string(i + 1) + " begins, and where the air goes.";
        moment.evidence = "made up";
        moment.shades = {tags[i % tags.size()]};
        moments.push_back(moment);
    }
    return moments;
}

std::string words_of(int lines) {
    std::string words;
    for (int i = 0; i < lines; ++i)
        words += "O-ver the wa-ter the light goes\n"; // eight syllables, as many as notes
    return words;
}

namespace {

void add_performance(project::Project& project, const Size& size, const std::string& label,
                     const std::filesystem::path& media) {
    std::ofstream(media) << "no sound, only bytes: " << label;
    project::Performance details;
    details.label = label;
    details.performer = "Made Up";
    details.facts.duration = size.length;
    details.facts.sample_rate_hz = 44100;
    details.facts.channels = 1;
    const auto id = project.add_performance(media, false, details);
    const auto analysis = analysis_of(size);
    project.store_listening(id, analysis);
    project.propose_moments(id, moments_of(size, analysis, id));
    std::vector<project::ScriptItem> items;
    for (const auto& moment : project.moments(id)) {
        if (static_cast<int>(items.size()) == size.stops) break;
        project::ScriptItem item;
        item.performance = id;
        item.kind = project::ScriptItemKind::stop;
        item.moment = moment.id;
        item.at = moment.span.end;
        item.text = "Here " + moment.remark;
        items.push_back(item);
    }
    project.store_script(id, items);
}

} // namespace

project::Project make_project(const std::filesystem::path& file, const std::vector<Size>& performances,
                              int lines) {
    project::Piece piece;
    piece.title = "Over Much Water";
    piece.words = words_of(lines);
    auto project = project::Project::create(file, piece);
    int number = 0;
    for (const Size& size : performances) {
        const std::string label = "take-" + std::to_string(++number);
        add_performance(project, size, label,
                        file.parent_path() / (file.stem().string() + "-" + label + ".wav"));
    }
    if (lines > 0) project::spread_sung_words(project, project.performances().front().id);
    return project;
}

} // namespace luft::load
