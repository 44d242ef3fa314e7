// A small invented performance for the tests of the script: two sung lines with a rest between.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::script::testing {

inline project::Mark mark_of(std::int64_t id,
                             std::variant<marks::Note, marks::Breath, marks::Phrase, marks::Switch> what) {
    project::Mark m;
    m.id = {id};
    m.performance = {1};
    m.what = std::move(what);
    return m;
}

inline project::Mark note(std::int64_t id, double start, double end) {
    marks::Note n;
    n.span = {Seconds(start), Seconds(end)};
    n.pitch = MidiPitch(64);
    n.confidence = {0.9};
    return mark_of(id, n);
}

inline project::Mark phrase(std::int64_t id, double start, double end) {
    marks::Phrase p;
    p.span = {Seconds(start), Seconds(end)};
    p.confidence = {0.9};
    return mark_of(id, p);
}

inline project::Moment moment(std::int64_t id, double start, double end, project::Verdict verdict,
                              std::vector<vocabulary::Tag> shades, std::string remark = {}) {
    project::Moment m;
    m.id = {id};
    m.performance = {1};
    m.span = {Seconds(start), Seconds(end)};
    m.verdict = verdict;
    m.shades = std::move(shades);
    m.remark = std::move(remark);
    return m;
}

inline project::ScriptItem item(std::int64_t id, project::ScriptItemKind kind, double at, std::string text) {
    project::ScriptItem i;
    i.id = {id};
    i.performance = {1};
    i.position = static_cast<int>(id);
    i.kind = kind;
    i.at = Seconds(at);
    i.text = std::move(text);
    return i;
}

/// `n` words.
inline std::string words(int n) {
    std::string text;
    for (int i = 0; i < n; ++i)
        text += i == 0 ? "word" : " word";
    return text;
}

/// 60 s of recording at 25 frames a second; sung from 4 to 12, 15 to 24 and 34 to 44 s.
inline Source material() {
    Source s;
    s.piece.title = "Harbour Lamps";
    s.piece.writer = "Ida Quill";
    s.performance.id = {1};
    s.performance.label = "A";
    s.performance.performer = "Mara Lindqvist";
    s.performance.source = "phone video of a house concert";
    s.performance.facts.duration = Seconds(60);
    s.marks = {phrase(1, 4, 12), note(2, 4, 6),   note(3, 6.2, 9),   note(4, 9, 12),    phrase(5, 15, 24),
               note(6, 15, 19),  note(7, 19, 24), phrase(8, 34, 44), note(9, 34, 38.5), note(10, 38.5, 44)};
    s.vocabulary = vocabulary::default_vocabulary();
    return s;
}

/// The same with a script, and no limit on quotes in reach.
inline Source with(std::vector<project::ScriptItem> items) {
    Source source = material();
    source.settings.longest_quote = Seconds(100);
    source.items = std::move(items);
    return source;
}

/// The same beside another performance, B, of 40 s; sung there from 5 to 14, 17 to 26 and 30 to 38 s.
inline Source compared(std::vector<project::ScriptItem> items) {
    Source source = with(std::move(items));
    project::Performance other;
    other.id = {2};
    other.label = "B";
    other.performer = "Ilse Brandt";
    other.source = "radio tape of 1998";
    other.permission = "mail of 9 June";
    other.media.path = "tapes/brandt 98.mkv";
    other.facts.duration = Seconds(40);
    source.others = {{other, {phrase(21, 5, 14), phrase(22, 17, 26), phrase(23, 30, 38)}}};
    return source;
}

} // namespace luft::script::testing
