#include "marks/phrases.h"

#include "base/text.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr Seconds kLeastPause{0.12};
constexpr std::size_t kFewNotes = 6;

Breath* breath_in(std::vector<Breath>& breaths, Span pause) {
    for (Breath& b : breaths)
        if (pause.contains(b.span.middle())) return &b;
    return nullptr;
}

Confidence mean_confidence(const std::vector<Note>& notes, std::size_t from, std::size_t to) {
    double sum = 0;
    for (std::size_t i = from; i < to; ++i)
        sum += notes[i].confidence.value;
    return {sum / static_cast<double>(to - from)};
}

/// The middle time from one note's start to the next; with too few notes, the middle length of a note.
Seconds usual_time(const std::vector<Note>& notes) {
    std::vector<double> times;
    for (std::size_t i = 0; i < notes.size(); ++i)
        if (notes.size() < kFewNotes)
            times.push_back(notes[i].span.length().value());
        else if (i + 1 < notes.size())
            times.push_back((notes[i + 1].span.start - notes[i].span.start).value());
    return Seconds(signal::median(times).value_or(1));
}

/// How likely it is that a phrase ends between two notes.
double ending(const Note& before, const Note& after, Seconds usual) {
    const Seconds pause = after.span.start - before.span.end;
    if (pause < kLeastPause) return 0;
    const double time = (after.span.start - before.span.start) / std::max(usual, Seconds(0.05));
    return signal::logistic(2.4 * std::log2(time) + 1.8 * std::log2(pause / Seconds(0.3)) - 2);
}

} // namespace

std::vector<Phrase> find_phrases(const std::vector<Note>& notes, std::vector<Breath>& breaths) {
    std::vector<Phrase> phrases;
    const Seconds usual = usual_time(notes);
    std::size_t first = 0;
    double begun = 1; // how sure it is that the phrase begins where it does
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const bool last = i + 1 == notes.size();
        const Span pause = last ? Span{} : Span{notes[i].span.end, notes[i + 1].span.start};
        Breath* breath = last ? nullptr : breath_in(breaths, pause);
        const double ends = last ? 1 : ending(notes[i], notes[i + 1], usual);
        if (ends <= 0.5) {
            if (!breath) continue;
            breath->inside_phrase = true;
            breath->evidence += "; quick, and the line goes on";
            continue;
        }
        Phrase p;
        p.span = {notes[first].span.start, notes[i].span.end};
        p.confidence = {mean_confidence(notes, first, i + 1).value * (1 + begun * ends) / 2};
        p.evidence = std::to_string(i + 1 - first) + (i == first ? " note" : " notes") + " in " +
                     fixed(p.span.length().value(), 1) + " s" +
                     (last ? ""
                           : ", then " + fixed(pause.length().value(), 2) + " s without singing" +
                                 (breath ? " and a breath" : ""));
        phrases.push_back(std::move(p));
        first = i + 1;
        begun = ends;
    }
    return phrases;
}

} // namespace luft::marks
