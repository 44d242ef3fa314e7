#include "export/compare_json.h"

#include "base/shown_text.h"
#include "export/compare_words.h"

#include <nlohmann/json.hpp>

namespace luft::exports {
namespace {

using compare::Comparison;
using json = nlohmann::ordered_json;

json span_value(Span span) {
    return {{"start_s", span.start.value()}, {"end_s", span.end.value()}};
}

json alone_value(const std::vector<compare::Alone>& alone) {
    json out = json::array();
    for (const auto& one : alone)
        out.push_back({{"span", span_value(one.span)},
                       {"sung", one.sung},
                       {"again", one.again ? span_value(*one.again) : json(nullptr)}});
    return out;
}

json differences_value(const Comparison& c) {
    json out = json::array();
    for (const auto& d : c.differences)
        out.push_back({{"kind", name_of(d.kind)},
                       {"a", d.a ? span_value(*d.a) : json(nullptr)},
                       {"b", d.b ? span_value(*d.b) : json(nullptr)},
                       {"size", d.size},
                       {"unit", name_of(d.unit)},
                       {"expected_error", d.expected},
                       {"confidence", d.confidence.value},
                       {"sentence", d.sentence}});
    return out;
}

json stretches_value(const compare::Alignment& alignment) {
    json out = json::array();
    for (const auto& stretch : alignment.stretches) {
        json knots = json::array();
        for (const auto& knot : stretch.knots)
            knots.push_back({knot.a.value(), knot.b.value()});
        out.push_back({{"confidence", stretch.confidence.value}, {"knots_s", knots}});
    }
    return out;
}

} // namespace

std::string compare_json(const Comparison& c) {
    json notes = json::array(), phrases = json::array(), tempo = json::array();
    for (const auto& point : compare::tempo_curve(c.alignment))
        tempo.push_back({{"a_s", point.a.value()}, {"speed", point.speed}});
    for (const auto& pair : c.counterparts.notes)
        notes.push_back({{"a", span_value(c.side_a.notes.at(pair.a).span)},
                         {"b", span_value(c.side_b.notes.at(pair.b).span)},
                         {"apart_cents", pair.apart.value()}});
    for (const auto& pair : c.counterparts.phrases)
        phrases.push_back({{"a", span_value(whole_of(pair.a, c.side_a.phrases))},
                           {"a_phrases", pair.a.size()},
                           {"b", span_value(whole_of(pair.b, c.side_b.phrases))},
                           {"b_phrases", pair.b.size()}});
    const json out{{"schema", "luftpause-comparison/1"},
                   {"a", c.a.label},
                   {"b", c.b.label},
                   {"semitones", c.alignment.semitones},
                   {"tuning_cents", c.alignment.tuning.value()},
                   {"tempo", tempo},
                   {"stretches", stretches_value(c.alignment)},
                   {"only_a", alone_value(c.alignment.only_a)},
                   {"only_b", alone_value(c.alignment.only_b)},
                   {"phrases", phrases},
                   {"notes", notes},
                   {"added_by_a", c.counterparts.added_by_a.size()},
                   {"added_by_b", c.counterparts.added_by_b.size()},
                   {"differences", differences_value(c)}};
    return shown_json(out.dump(2, ' ', false, json::error_handler_t::replace)) + "\n";
}

} // namespace luft::exports
