#include "export/compare_words.h"

#include "base/text.h"
#include "export/plain_text.h"

#include <algorithm>
#include <cmath>

namespace luft::exports {
namespace {

std::string how_many(std::size_t n) {
    return n == 1 ? "" : " (" + std::to_string(n) + " phrases)";
}

void add_alone(std::vector<std::string>& to, const std::vector<compare::Alone>& alone,
               const std::string& label) {
    for (const auto& one : alone)
        to.push_back("Only in " + one_line(label) + ": " + span_words(one.span) + (one.sung ? ", sung" : "") +
                     (one.again ? ", as " + span_words(*one.again) + " of the other is" : ""));
}

} // namespace

std::string span_words(Span span) {
    return clock_text(span.start) + "-" + clock_text(span.end);
}

std::string key_words(const compare::Comparison& c) {
    const int n = c.alignment.semitones;
    const std::string sings = one_line(c.b.label) + " sings ";
    const std::string key = n == 0 ? sings + "in the same key"
                                   : sings + counted(static_cast<std::size_t>(std::abs(n)), "semitone") +
                                         (n > 0 ? " higher" : " lower");
    return key + "; its A4 lies " + fixed(std::abs(c.alignment.tuning.value()), 0) + " cents " +
           (c.alignment.tuning < Cents(0) ? "lower" : "higher");
}

std::string tempo_words(const compare::Comparison& c) {
    std::vector<double> speeds;
    for (const auto& point : compare::tempo_curve(c.alignment))
        speeds.push_back(point.speed);
    if (speeds.empty()) return "too little in common to tell";
    std::ranges::sort(speeds);
    const double middle = speeds[speeds.size() / 2];
    std::string text = one_line(c.b.label) + " runs at " + fixed(100 * middle, 0) + " % of the speed of " +
                       one_line(c.a.label);
    if (speeds.size() > 2)
        text +=
            ", between " + fixed(100 * speeds.front(), 0) + " and " + fixed(100 * speeds.back(), 0) + " %";
    return text;
}

std::string notes_words(const compare::Comparison& c) {
    return counted(c.counterparts.notes.size(), "pair") + "; inside these phrases " + one_line(c.a.label) +
           " sings " + std::to_string(c.counterparts.added_by_a.size()) + " more, " + one_line(c.b.label) +
           " " + std::to_string(c.counterparts.added_by_b.size()) + " more";
}

Span whole_of(const std::vector<std::size_t>& phrases, const std::vector<marks::Phrase>& all) {
    return {all.at(phrases.front()).span.start, all.at(phrases.back()).span.end};
}

std::vector<PhraseLine> phrase_lines(const compare::Comparison& c) {
    std::vector<PhraseLine> rows;
    for (const auto& phrase : c.counterparts.phrases)
        rows.push_back({span_words(whole_of(phrase.a, c.side_a.phrases)) + how_many(phrase.a.size()),
                        span_words(whole_of(phrase.b, c.side_b.phrases)) + how_many(phrase.b.size())});
    for (const std::size_t only : c.counterparts.phrases_only_a)
        rows.push_back({span_words(c.side_a.phrases.at(only).span), "no counterpart"});
    for (const std::size_t only : c.counterparts.phrases_only_b)
        rows.push_back({"no counterpart", span_words(c.side_b.phrases.at(only).span)});
    return rows;
}

std::vector<std::string> gaps_words(const compare::Comparison& c) {
    std::vector<std::string> out;
    for (const auto& stretch : c.alignment.stretches)
        if (stretch.confidence.value < 0.5)
            out.push_back("Not sure: " + span_words(stretch.a()) + " of " + one_line(c.a.label) +
                          " against " + span_words(stretch.b()) + " of " + one_line(c.b.label));
    add_alone(out, c.alignment.only_a, c.a.label);
    add_alone(out, c.alignment.only_b, c.b.label);
    return out;
}

std::string size_words(const compare::Difference& d) {
    if (d.unit == compare::Unit::times) return {};
    return fixed(d.size, std::abs(d.size) < 10 ? 1 : 0) + " " + name_of(d.unit);
}

} // namespace luft::exports
