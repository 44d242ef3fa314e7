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

std::string times_the_error(double ratio) {
    return (ratio > 20 ? std::string("over 20") : fixed(ratio, 0)) + " times the measuring error";
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
    const std::string cents = fixed(std::abs(c.alignment.tuning.value()), 0);
    if (cents == "0") return key + "; both are tuned alike";
    return key + "; its A4 lies " + cents + (cents == "1" ? " cent " : " cents ") +
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

std::string expected_words(const compare::Difference& d) {
    if (d.unit == compare::Unit::times)
        return d.expected < 0.01 ? std::string("under 1 %") : fixed(100 * d.expected, 0) + " %";
    return fixed(d.expected, d.expected < 0.95 ? 2 : 1) + " " + name_of(d.unit);
}

std::string sure_words(const compare::Difference& d) {
    return d.confidence.value > 0.99 ? "over 99 %" : fixed(100 * d.confidence.value, 0) + " %";
}

Portrait portrait(const project::Performance& performance, const compare::Side& side) {
    Portrait out{performance.label, {}};
    if (!performance.performer.empty()) out.lines.push_back("Sung by " + one_line(performance.performer));
    if (!performance.source.empty()) out.lines.push_back("Source: " + one_line(performance.source));
    if (!performance.permission.empty())
        out.lines.push_back("Permission: " + one_line(performance.permission));
    out.lines.push_back(clock_text(side.duration) + ", " +
                        (side.setting == voice::Setting::alone ? "voice alone" : "with accompaniment") +
                        ", A4 = " + fixed(side.tuning.value(), 1) + " Hz");
    out.lines.push_back(counted(side.phrases.size(), "phrase") + ", " +
                        counted(side.breaths.size(), "breath") + ", " + counted(side.notes.size(), "note"));
    return out;
}

std::vector<TalkPoint> talk_points(const compare::Comparison& c) {
    std::vector<TalkPoint> points;
    for (const compare::Telling& telling : compare::most_telling(c.differences)) {
        const compare::Difference& d = c.differences.at(telling.difference);
        TalkPoint point{telling.difference, one_line(d.sentence), {}, sure_words(d) + " sure"};
        if (!telling.likewise.empty())
            point.words += " " + one_line(c.differences.at(telling.likewise.front()).sentence);
        if (d.a && d.b)
            point.hear = "Hear " + one_line(c.a.label) + " " + clock_text(d.a->start) + ", " +
                         one_line(c.b.label) + " " + clock_text(d.b->start);
        if (d.unit != compare::Unit::times && d.expected > 0)
            point.sure += ", " + times_the_error(std::abs(d.size) / d.expected);
        points.push_back(std::move(point));
    }
    return points;
}

std::vector<std::string> lead_words(const compare::Comparison& c) {
    if (c.alignment.stretches.empty()) return {nothing_shared(c)};
    return {key_words(c) + ".", tempo_words(c) + "."};
}

std::string table_words(const compare::Comparison& c) {
    return "Sizes are " + one_line(c.b.label) + " less " + one_line(c.a.label) +
           ". The error is what measuring alone would give between two hearings of the same singing (about "
           "two in three such errors are smaller); a size under three times that isn't listed. Of what is "
           "counted it is the "
           "probability that nothing but the ear's own error is behind it.";
}

std::string talk_caution() {
    return "Estimates from the sound of two recordings, no ranking of singers and no word about a voice's "
           "health. Hear both places before you speak of one: of the same singing heard twice, now and then "
           "something is claimed, too.";
}

std::string nothing_shared(const compare::Comparison& c) {
    return "'" + one_line(c.a.label) + "' and '" + one_line(c.b.label) +
           "' have nothing in common that could be found.";
}

std::string nothing_differs() {
    return "No difference beyond what the ear's own error would give.";
}

} // namespace luft::exports
