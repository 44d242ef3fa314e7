// Two invented performances compared, with every kind of thing a report has to say.
#pragma once

#include "compare/comparison.h"
#include "export/compare_html.h"

namespace luft::exports::testing {

/// Four phrases of two notes against three; B runs at 125 % until 20 s of A, from 30 s on at 80 %; between
/// them A has an interlude of its own.
inline compare::Comparison comparison() {
    using namespace compare;
    const auto s = [](double v) { return Seconds(v); };
    Comparison c;
    c.piece.title = "Harbour <Lamps>";
    c.piece.writer = "Ilse Farrow";
    c.a.label = "early";
    c.a.performer = "Mara Lindqvist";
    c.a.source = "a room";
    c.a.permission = "letter of 3 May";
    c.b.label = "late";
    c.side_a.duration = s(52), c.side_b.duration = s(45);
    c.side_b.tuning = Hertz(442);
    for (const double at : {0.0, 8.0, 30.0, 41.0}) {
        c.side_a.phrases.push_back({{s(at), s(at + 7)}, {0.9}, ""});
        for (int i = 0; i < 2; ++i) {
            marks::Note note;
            note.span = {s(at + 4 * i), s(at + 4 * i + 3)};
            c.side_a.notes.push_back(note);
        }
    }
    for (const auto& [from, to] : {std::pair(0.0, 12.0), std::pair(16.5, 28.0), std::pair(30.0, 42.0)})
        c.side_b.phrases.push_back({{s(from), s(to)}, {0.9}, ""});
    marks::Note note;
    note.span = {s(0), s(2.4)};
    c.side_b.notes.push_back(note);
    Alignment& alignment = c.alignment;
    alignment.semitones = -2;
    alignment.tuning = Cents(8);
    alignment.stretches.resize(2);
    alignment.stretches[0].knots = {{s(0), s(0)}, {s(20), s(16)}};
    alignment.stretches[0].confidence = {0.95};
    alignment.stretches[1].knots = {{s(30), s(16)}, {s(52), s(43.5)}};
    alignment.stretches[1].confidence = {0.4};
    alignment.only_a = {{{s(20), s(30)}, false}};
    c.counterparts.phrases = {{{0, 1}, {0}}, {{2}, {1}}};
    c.counterparts.phrases_only_a = {3};
    c.counterparts.phrases_only_b = {2};
    c.counterparts.notes = {{0, 0, Cents(0)}};
    const auto place = [&](double t) { return Span{s(t), s(t + 0.3)}; };
    c.differences = {
        {DifferenceKind::key, {}, {}, -2, Unit::semitones, 0.02, {0.999}, "late sings 2 semitones lower."},
        {DifferenceKind::phrase_joined,
         place(9),
         place(7.2),
         1,
         Unit::times,
         0,
         {1},
         "late joins two lines."},
        {DifferenceKind::breath_saved, place(9.1), place(7.3), -1, Unit::times, 0.1, {0.9}, "late goes on."},
        {DifferenceKind::note_intonation,
         place(14),
         place(11.2),
         37,
         Unit::cents,
         4.8,
         {0.81},
         "late sings <high> & \"sharp\"."},
        {DifferenceKind::level_shape, place(31), place(17), -6.2, Unit::decibels, 2, {0.97}, "late fades."}};
    return c;
}

/// What a project would hold of one of the two.
inline profile::Source source_of(const project::Performance& performance, const compare::Side& side) {
    profile::Source source;
    source.performance = performance;
    const auto add = [&](const auto& all) {
        for (const auto& one : all) {
            project::Mark mark;
            mark.what = one;
            source.marks.push_back(std::move(mark));
        }
    };
    add(side.notes), add(side.breaths), add(side.phrases);
    return source;
}

inline std::string page_of(const compare::Comparison& c) {
    return compare_html(c, source_of(c.a, c.side_a), source_of(c.b, c.side_b));
}

} // namespace luft::exports::testing
