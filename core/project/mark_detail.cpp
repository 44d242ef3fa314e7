#include "project/mark_detail.h"

#include "project/words.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace luft::project {
namespace {

using nlohmann::json;

double finite(double value) {
    if (!std::isfinite(value))
        throw Error(Fault::bad_request, "A mark's value is not a number.",
                    "Give a finite number, or leave the value out.");
    return value;
}

template <class Unit>
json number(Unit value) {
    return finite(value.value());
}
template <class Unit>
json number_or_null(const std::optional<Unit>& value) {
    return value ? number(*value) : json(nullptr);
}
/// A value's place in a mark's JSON: in an object within, or in the outer one.
struct Place {
    const DetailValues& of;
    std::string_view group = {};
};

template <class Unit>
Unit read_number(Place in, std::string_view key) {
    return Unit(in.of.number(in.group, key));
}
template <class Unit>
std::optional<Unit> read_maybe(Place in, std::string_view key) {
    if (in.of.is_null(in.group, key)) return std::nullopt;
    return read_number<Unit>(in, key);
}
template <class E>
E read_kind(Place in, std::string_view key) {
    return read_word<E>(in.of.text(in.group, key));
}
/// For values that older files don't have.
template <class E>
std::optional<E> read_maybe_kind(Place in, std::string_view key) {
    if (in.of.lacks(in.group, key)) return std::nullopt;
    return read_kind<E>(in, key);
}
Confidence read_confidence(Place in) {
    return {in.of.number(in.group, "confidence")};
}

json word_or_null(const std::optional<marks::Dynamic>& value) {
    return value ? json(word(*value)) : json(nullptr);
}

template <class Edge>
json edge(const Edge& e) {
    return {{"kind", word(e.kind)}, {"confidence", finite(e.confidence.value)}, {"evidence", e.evidence}};
}
template <class Edge>
Edge read_edge(Place in) {
    return {read_kind<decltype(Edge::kind)>(in, "kind"), read_confidence(in),
            in.of.text(in.group, "evidence")};
}

json values(const marks::Note& n) {
    json j = {{"midi", number(n.pitch)},
              {"cents", number(n.cents)},
              {"drift_cents", number(n.drift)},
              {"scoop_cents", number_or_null(n.scoop)},
              {"vibrato", nullptr},
              {"onset", edge(n.onset)},
              {"offset", edge(n.offset)},
              {"vowel", nullptr},
              {"register", nullptr},
              {"level_db", number(n.level)},
              {"shape", word(n.shape)},
              {"level_change_db", number(n.level_change)},
              {"dynamic", word_or_null(n.dynamic)}};
    if (n.vibrato)
        j["vibrato"] = {{"rate_hz", number(n.vibrato->rate)},
                        {"extent_cents", number(n.vibrato->extent)},
                        {"regularity", finite(n.vibrato->regularity)}};
    if (n.vowel)
        j["vowel"] = {
            {"f1_hz", number(n.vowel->f1)}, {"f2_hz", number(n.vowel->f2)}, {"nearest", n.vowel->nearest}};
    if (n.sung_in) j["register"] = word(*n.sung_in);
    return j;
}

json values(const marks::Breath& b) {
    return {{"evidence", word(b.evidence_kind)},
            {"inside_phrase", b.inside_phrase},
            {"below_voice_db", number_or_null(b.below_voice)}};
}

json values(const marks::Phrase& p) {
    json level = nullptr;
    if (p.level)
        level = {{"shape", word(p.level->shape)},
                 {"change_db", number(p.level->change)},
                 {"rise_db", number(p.level->rise)},
                 {"peak_at", p.level->peak_at ? json(finite(*p.level->peak_at)) : json(nullptr)},
                 {"confidence", finite(p.level->confidence.value)}};
    return {{"level", level}, {"dynamic", word_or_null(p.dynamic)}};
}

json values(const marks::Switch& s) {
    return {{"from", word(s.from)}, {"to", word(s.to)}, {"leap", s.leap}};
}

marks::Note read_note(const DetailValues& values, Span span) {
    const Place all{values};
    marks::Note n;
    n.span = span;
    n.pitch = read_number<MidiPitch>(all, "midi");
    n.cents = read_number<Cents>(all, "cents");
    n.drift = read_number<Cents>(all, "drift_cents");
    n.scoop = read_maybe<Cents>(all, "scoop_cents");
    if (const Place v{values, "vibrato"}; values.has_group(v.group))
        n.vibrato = {read_number<Hertz>(v, "rate_hz"), read_number<Cents>(v, "extent_cents"),
                     values.number(v.group, "regularity")};
    n.onset = read_edge<marks::Onset>({values, "onset"});
    n.offset = read_edge<marks::Offset>({values, "offset"});
    if (const Place v{values, "vowel"}; values.has_group(v.group))
        n.vowel = {read_number<Hertz>(v, "f1_hz"), read_number<Hertz>(v, "f2_hz"),
                   values.text(v.group, "nearest")};
    if (!values.is_null("", "register")) n.sung_in = read_kind<marks::Register>(all, "register");
    n.level = read_number<Decibels>(all, "level_db");
    n.shape = read_kind<marks::LevelShape>(all, "shape");
    n.level_change = read_number<Decibels>(all, "level_change_db");
    n.dynamic = read_maybe_kind<marks::Dynamic>(all, "dynamic");
    return n;
}

marks::Phrase read_phrase(const DetailValues& values, Span span) {
    marks::Phrase p{span, {}, {}};
    p.dynamic = read_maybe_kind<marks::Dynamic>({values}, "dynamic");
    const Place level{values, "level"};
    if (values.lacks("", level.group) || !values.has_group(level.group)) return p;
    marks::PhraseLevel& l = p.level.emplace();
    l.shape = read_kind<marks::LevelShape>(level, "shape");
    l.change = read_number<Decibels>(level, "change_db");
    l.rise = read_number<Decibels>(level, "rise_db");
    if (!values.is_null(level.group, "peak_at")) l.peak_at = values.number(level.group, "peak_at");
    l.confidence = read_confidence(level);
    return p;
}

marks::Breath read_breath(const DetailValues& values, Span span) {
    const Place all{values};
    marks::Breath b;
    b.span = span;
    b.evidence_kind = read_kind<marks::BreathEvidence>(all, "evidence");
    b.inside_phrase = values.truth("", "inside_phrase");
    b.below_voice = read_maybe<Decibels>(all, "below_voice_db");
    return b;
}

marks::Switch read_switch(const DetailValues& values, Span span) {
    const Place all{values};
    marks::Switch s;
    s.time = span.start;
    s.from = read_kind<marks::Register>(all, "from");
    s.to = read_kind<marks::Register>(all, "to");
    s.leap = values.truth("", "leap");
    return s;
}

} // namespace

std::string detail_text(const Mark& mark) {
    const json j = std::visit([](const auto& m) { return values(m); }, mark.what);
    return j.dump(-1, ' ', false, json::error_handler_t::replace);
}

void DetailReader::put(Mark& mark, MarkKind kind, Span span, Confidence confidence,
                       const std::string& evidence, const std::string& detail) {
    try {
        values_.read(detail);
        switch (kind) {
        case MarkKind::note:
            mark.what = read_note(values_, span);
            break;
        case MarkKind::breath:
            mark.what = read_breath(values_, span);
            break;
        case MarkKind::phrase:
            mark.what = read_phrase(values_, span);
            break;
        case MarkKind::register_switch:
            mark.what = read_switch(values_, span);
            break;
        }
    } catch (const DetailValues::Missing&) {
        throw Error(Fault::unreadable,
                    "The " + std::string(word(kind)) + " with the number " + std::to_string(mark.id.value) +
                        " is damaged in the project file.",
                    "Run a check to see what else is.");
    }
    std::visit(
        [&](auto& m) {
            m.confidence = confidence;
            m.evidence = evidence;
        },
        mark.what);
}

} // namespace luft::project
