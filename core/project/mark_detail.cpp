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
template <class Unit>
Unit read_number(const json& from, const char* key) {
    return Unit(from.at(key).get<double>());
}
template <class Unit>
std::optional<Unit> read_maybe(const json& from, const char* key) {
    if (from.at(key).is_null()) return std::nullopt;
    return read_number<Unit>(from, key);
}
/// For values that older files don't have.
template <class E>
std::optional<E> read_maybe_kind(const json& from, const char* key) {
    if (!from.contains(key) || from.at(key).is_null()) return std::nullopt;
    return read_word<E>(from.at(key).get_ref<const std::string&>());
}
template <class E>
E read_kind(const json& from, const char* key) {
    return read_word<E>(from.at(key).get_ref<const std::string&>());
}
Confidence read_confidence(const json& from) {
    return {from.at("confidence").get<double>()};
}

json word_or_null(const std::optional<marks::Dynamic>& value) {
    return value ? json(word(*value)) : json(nullptr);
}

template <class Edge>
json edge(const Edge& e) {
    return {{"kind", word(e.kind)}, {"confidence", finite(e.confidence.value)}, {"evidence", e.evidence}};
}
template <class Edge>
Edge read_edge(const json& j) {
    return {read_kind<decltype(Edge::kind)>(j, "kind"), read_confidence(j),
            j.at("evidence").get<std::string>()};
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

marks::Note read_note(const json& j, Span span) {
    marks::Note n;
    n.span = span;
    n.pitch = read_number<MidiPitch>(j, "midi");
    n.cents = read_number<Cents>(j, "cents");
    n.drift = read_number<Cents>(j, "drift_cents");
    n.scoop = read_maybe<Cents>(j, "scoop_cents");
    if (const json& v = j.at("vibrato"); !v.is_null())
        n.vibrato = {read_number<Hertz>(v, "rate_hz"), read_number<Cents>(v, "extent_cents"),
                     v.at("regularity").get<double>()};
    n.onset = read_edge<marks::Onset>(j.at("onset"));
    n.offset = read_edge<marks::Offset>(j.at("offset"));
    if (const json& v = j.at("vowel"); !v.is_null())
        n.vowel = {read_number<Hertz>(v, "f1_hz"), read_number<Hertz>(v, "f2_hz"),
                   v.at("nearest").get<std::string>()};
    if (!j.at("register").is_null()) n.sung_in = read_kind<marks::Register>(j, "register");
    n.level = read_number<Decibels>(j, "level_db");
    n.shape = read_kind<marks::LevelShape>(j, "shape");
    n.level_change = read_number<Decibels>(j, "level_change_db");
    n.dynamic = read_maybe_kind<marks::Dynamic>(j, "dynamic");
    return n;
}

marks::Phrase read_phrase(const json& j, Span span) {
    marks::Phrase p{span, {}, {}};
    p.dynamic = read_maybe_kind<marks::Dynamic>(j, "dynamic");
    if (!j.contains("level") || j.at("level").is_null()) return p;
    const json& level = j.at("level");
    marks::PhraseLevel& l = p.level.emplace();
    l.shape = read_kind<marks::LevelShape>(level, "shape");
    l.change = read_number<Decibels>(level, "change_db");
    l.rise = read_number<Decibels>(level, "rise_db");
    if (!level.at("peak_at").is_null()) l.peak_at = level.at("peak_at").get<double>();
    l.confidence = read_confidence(level);
    return p;
}

marks::Breath read_breath(const json& j, Span span) {
    marks::Breath b;
    b.span = span;
    b.evidence_kind = read_kind<marks::BreathEvidence>(j, "evidence");
    b.inside_phrase = j.at("inside_phrase").get<bool>();
    b.below_voice = read_maybe<Decibels>(j, "below_voice_db");
    return b;
}

marks::Switch read_switch(const json& j, Span span) {
    marks::Switch s;
    s.time = span.start;
    s.from = read_kind<marks::Register>(j, "from");
    s.to = read_kind<marks::Register>(j, "to");
    s.leap = j.at("leap").get<bool>();
    return s;
}

} // namespace

std::string detail_text(const Mark& mark) {
    const json j = std::visit([](const auto& m) { return values(m); }, mark.what);
    return j.dump(-1, ' ', false, json::error_handler_t::replace);
}

void set_what(Mark& mark, MarkKind kind, Span span, Confidence confidence, const std::string& evidence,
              const std::string& detail) {
    try {
        const json j = json::parse(detail);
        switch (kind) {
        case MarkKind::note:
            mark.what = read_note(j, span);
            break;
        case MarkKind::breath:
            mark.what = read_breath(j, span);
            break;
        case MarkKind::phrase:
            mark.what = read_phrase(j, span);
            break;
        case MarkKind::register_switch:
            mark.what = read_switch(j, span);
            break;
        }
    } catch (const json::exception&) {
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
