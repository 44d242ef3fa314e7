#include "marks/phrases.h"

#include "base/text.h"
#include "signal/statistics.h"

#include <algorithm>

namespace luft::marks {
namespace {

constexpr Seconds kPause{0.28};
constexpr Seconds kPauseWithBreath{0.15};
constexpr Seconds kQuickPause{0.47};

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

} // namespace

std::vector<Phrase> find_phrases(const std::vector<Note>& notes, std::vector<Breath>& breaths) {
    std::vector<Phrase> phrases;
    std::size_t first = 0;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const bool last = i + 1 == notes.size();
        const Span pause = last ? Span{} : Span{notes[i].span.end, notes[i + 1].span.start};
        Breath* breath = last ? nullptr : breath_in(breaths, pause);
        const bool ends = last || pause.length() >= kPause || (breath && pause.length() >= kPauseWithBreath);
        if (!ends) continue;
        Phrase p;
        p.span = {notes[first].span.start, notes[i].span.end};
        p.confidence = mean_confidence(notes, first, i + 1);
        p.evidence = std::to_string(i + 1 - first) + (i == first ? " note" : " notes") + " in " +
                     fixed(p.span.length().value(), 1) + " s" +
                     (last ? ""
                           : ", then " + fixed(pause.length().value(), 2) + " s without singing" +
                                 (breath ? " and a breath" : ""));
        phrases.push_back(std::move(p));
        first = i + 1;
    }
    // A quick breath after a stretch well under the usual length, with the line going on, is taken inside a
    // phrase.
    std::vector<double> lengths;
    for (const Phrase& p : phrases)
        lengths.push_back(p.span.length().value());
    const double usual = signal::median(lengths).value_or(0);
    for (std::size_t k = 0; k + 1 < phrases.size(); ++k) {
        const Span pause{phrases[k].span.end, phrases[k + 1].span.start};
        Breath* breath = breath_in(breaths, pause);
        if (breath && pause.length() < kQuickPause &&
            std::min(phrases[k].span.length(), phrases[k + 1].span.length()).value() < 1.5 * usual) {
            breath->inside_phrase = true;
            breath->evidence += "; quick, and the line goes on";
        }
    }
    return phrases;
}

} // namespace luft::marks
