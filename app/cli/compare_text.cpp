#include "cli/compare_text.h"

#include "base/text.h"
#include "cli/table.h"

#include <algorithm>
#include <cmath>

namespace luft::cli {
namespace {

using compare::Alignment;
using files::Compared;

std::string span_text(Span span) {
    return clock_text(span.start) + "-" + clock_text(span.end);
}

std::string key_text(const Compared& c) {
    const int n = c.alignment.semitones;
    const std::string sings = one_line(c.b.label) + " sings ";
    const std::string key = n == 0 ? sings + "in the same key"
                                   : sings + counted(static_cast<std::size_t>(std::abs(n)), "semitone") +
                                         (n > 0 ? " higher" : " lower");
    return key + "; its A4 lies " + fixed(std::abs(c.alignment.tuning.value()), 0) + " cents " +
           (c.alignment.tuning < Cents(0) ? "lower" : "higher");
}

std::string tempo_text(const Compared& c) {
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

std::string alone_text(const std::vector<compare::Alone>& alone, const std::string& label) {
    std::string text;
    for (const auto& one : alone)
        text += "Only in " + one_line(label) + ": " + span_text(one.span) + (one.sung ? ", sung" : "") +
                (one.again ? ", as " + span_text(*one.again) + " of the other is" : "") + "\n";
    return text;
}

/// The places of several phrases, first to last.
Span whole(const std::vector<std::size_t>& phrases, const std::vector<marks::Phrase>& all) {
    return {all.at(phrases.front()).span.start, all.at(phrases.back()).span.end};
}

std::string how_many(std::size_t n) {
    return n == 1 ? "" : " (" + std::to_string(n) + " phrases)";
}

Json span_value(Span span) {
    return {{"start_s", span.start.value()}, {"end_s", span.end.value()}};
}

Json alone_value(const std::vector<compare::Alone>& alone) {
    Json out = Json::array();
    for (const auto& one : alone)
        out.push_back({{"span", span_value(one.span)},
                       {"sung", one.sung},
                       {"again", one.again ? span_value(*one.again) : Json(nullptr)}});
    return out;
}

std::string differences_text(const Compared& c) {
    if (c.differences.empty()) return "\nNo difference beyond what the ear's own error would give\n";
    Table table({{one_line(c.a.label)}, {"Size", Align::right}, {"Sure", Align::right}, {"Difference"}});
    for (const auto& d : c.differences) {
        const bool counts = d.unit == compare::Unit::times;
        table.add({d.a ? clock_text(d.a->start) : "whole",
                   counts ? "" : fixed(d.size, std::abs(d.size) < 10 ? 1 : 0) + " " + name_of(d.unit),
                   fixed(100 * d.confidence.value, 0) + " %", one_line(d.sentence)});
    }
    return "\nWhat " + one_line(c.b.label) + " does otherwise\n" + table.text();
}

Json differences_value(const Compared& c) {
    Json out = Json::array();
    for (const auto& d : c.differences)
        out.push_back({{"kind", name_of(d.kind)},
                       {"a", d.a ? span_value(*d.a) : Json(nullptr)},
                       {"b", d.b ? span_value(*d.b) : Json(nullptr)},
                       {"size", d.size},
                       {"unit", name_of(d.unit)},
                       {"expected_error", d.expected},
                       {"confidence", d.confidence.value},
                       {"sentence", d.sentence}});
    return out;
}

} // namespace

std::string compared_text(const Compared& c) {
    const auto& pairs = c.counterparts;
    if (c.alignment.stretches.empty())
        return "'" + one_line(c.a.label) + "' and '" + one_line(c.b.label) +
               "' have nothing in common that could be found.\n";
    std::string text = one_line(c.b.label) + " against " + one_line(c.a.label) + "\nKey      " + key_text(c) +
                       "\nTempo    " + tempo_text(c) + "\nNotes    " + counted(pairs.notes.size(), "pair") +
                       "; inside these phrases " + one_line(c.a.label) + " sings " +
                       std::to_string(pairs.added_by_a.size()) + " more, " + one_line(c.b.label) + " " +
                       std::to_string(pairs.added_by_b.size()) + " more\n\n";
    Table table({{one_line(c.a.label)}, {one_line(c.b.label)}});
    for (const auto& phrase : pairs.phrases)
        table.add({span_text(whole(phrase.a, c.side_a.phrases)) + how_many(phrase.a.size()),
                   span_text(whole(phrase.b, c.side_b.phrases)) + how_many(phrase.b.size())});
    for (const std::size_t only : pairs.phrases_only_a)
        table.add({span_text(c.side_a.phrases.at(only).span), "no counterpart"});
    for (const std::size_t only : pairs.phrases_only_b)
        table.add({"no counterpart", span_text(c.side_b.phrases.at(only).span)});
    text += "Phrase against phrase\n" + table.text();
    for (const auto& stretch : c.alignment.stretches)
        if (stretch.confidence.value < 0.5)
            text += "Not sure: " + span_text(stretch.a()) + " of " + one_line(c.a.label) + " against " +
                    span_text(stretch.b()) + " of " + one_line(c.b.label) + "\n";
    return text + alone_text(c.alignment.only_a, c.a.label) + alone_text(c.alignment.only_b, c.b.label) +
           differences_text(c);
}

Json compared_value(const Compared& c) {
    Json stretches = Json::array(), notes = Json::array(), phrases = Json::array(), tempo = Json::array();
    for (const auto& stretch : c.alignment.stretches) {
        Json knots = Json::array();
        for (const auto& knot : stretch.knots)
            knots.push_back({knot.a.value(), knot.b.value()});
        stretches.push_back({{"confidence", stretch.confidence.value}, {"knots_s", knots}});
    }
    for (const auto& point : compare::tempo_curve(c.alignment))
        tempo.push_back({{"a_s", point.a.value()}, {"speed", point.speed}});
    for (const auto& pair : c.counterparts.notes)
        notes.push_back({{"a", span_value(c.side_a.notes.at(pair.a).span)},
                         {"b", span_value(c.side_b.notes.at(pair.b).span)},
                         {"apart_cents", pair.apart.value()}});
    for (const auto& pair : c.counterparts.phrases)
        phrases.push_back({{"a", span_value(whole(pair.a, c.side_a.phrases))},
                           {"a_phrases", pair.a.size()},
                           {"b", span_value(whole(pair.b, c.side_b.phrases))},
                           {"b_phrases", pair.b.size()}});
    return {{"schema", "luftpause-comparison/1"},
            {"a", c.a.label},
            {"b", c.b.label},
            {"semitones", c.alignment.semitones},
            {"tuning_cents", c.alignment.tuning.value()},
            {"tempo", tempo},
            {"stretches", stretches},
            {"only_a", alone_value(c.alignment.only_a)},
            {"only_b", alone_value(c.alignment.only_b)},
            {"phrases", phrases},
            {"notes", notes},
            {"added_by_a", c.counterparts.added_by_a.size()},
            {"added_by_b", c.counterparts.added_by_b.size()},
            {"differences", differences_value(c)}};
}

} // namespace luft::cli
