#include "export/profile_json.h"

#include "base/shown_text.h"
#include "base/text.h"
#include "export/page.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace luft::exports {
namespace {

using json = nlohmann::ordered_json;

std::string clean(const std::string& text) {
    return valid_utf8(text);
}

/// Rounded to what the figure is good for; null when it isn't finite.
json number(double v, int digits) {
    if (!std::isfinite(v)) return nullptr;
    const double scale = std::pow(10.0, digits);
    return std::round(v * scale) / scale + 0.0;
}

json number(const std::optional<double>& v, int digits) {
    return v ? number(*v, digits) : json(nullptr);
}

json words_or_null(const std::string& text) {
    return text.empty() ? json(nullptr) : json(clean(text));
}

json example(const profile::Example& e) {
    return {{"start_s", number(e.span.start.value(), 3)},
            {"end_s", number(e.span.end.value(), 3)},
            {"words", clean(e.words)}};
}

json example(const std::optional<profile::Example>& e) {
    return e ? example(*e) : json(nullptr);
}

json shade(const profile::ShadeShare& s) {
    return {{"shade", s.tag.shade},
            {"name", clean(s.name)},
            {"axis", s.axis},
            {"of", s.of},
            {"count", s.count},
            {"time_s", number(s.time.value(), 2)},
            {"share", number(s.share, 4)},
            {"by_range", s.by_range},
            {"by_quarter", s.by_quarter},
            {"by_coach", s.by_coach},
            {"best", example(s.best)}};
}

json measure(const profile::Measure& m) {
    json range = json::array(), quarter = json::array();
    for (const auto& v : m.by_range)
        range.push_back(number(v, m.digits + 1));
    for (const auto& v : m.by_quarter)
        quarter.push_back(number(v, m.digits + 1));
    return {{"measure", m.key},
            {"name", m.name},
            {"unit", m.unit},
            {"median", number(m.median, m.digits + 1)},
            {"p10", number(m.low, m.digits + 1)},
            {"p90", number(m.high, m.digits + 1)},
            {"count", m.count},
            {"by_range", range},
            {"by_quarter", quarter},
            {"note", m.note}};
}

json hint(const profile::FacetHint& h) {
    json out{{"hint", h.key}, {"words", clean(h.words)}, {"signs", h.signs}, {"evidence", json::array()}};
    for (const auto& e : h.evidence)
        out["evidence"].push_back({{"measure", e.key},
                                   {"unit", e.unit},
                                   {"value", number(e.value, 1)},
                                   {"count", e.count},
                                   {"speaks_under", number(e.border, 1)}});
    return out;
}

json facet(const profile::FacetProfile& f) {
    json out{{"facet", f.key},
             {"name", clean(f.name)},
             {"basis", f.basis == vocabulary::Basis::measured ? "measured"
                       : f.basis == vocabulary::Basis::hint   ? "hint"
                                                              : "coach"},
             {"summary", clean(f.summary)},
             {"shades", json::array()},
             {"measures", json::array()},
             {"hints", json::array()},
             {"best", example(f.best)},
             {"counter", example(f.counter)}};
    for (const auto& s : f.shades)
        out["shades"].push_back(shade(s));
    for (const auto& m : f.measures)
        out["measures"].push_back(measure(m));
    for (const auto& h : f.hints)
        out["hints"].push_back(hint(h));
    return out;
}

json findings(const std::vector<profile::Finding>& list) {
    json out = json::array();
    for (const auto& f : list) {
        json examples = json::array();
        for (const auto& e : f.examples)
            examples.push_back(example(e));
        out.push_back({{"facet", words_or_null(f.facet)},
                       {"words", clean(f.words)},
                       {"examples", examples},
                       {"hint", f.hint},
                       {"coach", f.coach},
                       {"drill", words_or_null(f.drill)}});
    }
    return out;
}

json range(const std::optional<profile::SungRange>& r) {
    if (!r) return nullptr;
    const auto pitch = [](MidiPitch p) {
        return json{{"midi", number(p.value(), 2)}, {"note", note_name(p)}};
    };
    return {{"lowest", pitch(r->lowest)},
            {"highest", pitch(r->highest)},
            {"tessitura_low", pitch(r->tessitura_low)},
            {"tessitura_high", pitch(r->tessitura_high)},
            {"middle_third", {pitch(r->thirds[0]), pitch(r->thirds[1])}},
            {"divided", r->divided}};
}

json listening(const std::optional<project::Listening>& l) {
    if (!l) return nullptr;
    const auto or_null = [](const auto& v) { return v ? number(v->value(), 2) : json(nullptr); };
    return {{"accompanied", l->setting == voice::Setting::accompanied},
            {"tuning_hz", number(l->tuning.value(), 2)},
            {"integrated_lufs", or_null(l->loudness.integrated)},
            {"range_lu", or_null(l->loudness.range)},
            {"true_peak_dbtp", or_null(l->loudness.true_peak)},
            {"one_register", l->one_register}};
}

} // namespace

std::string profile_json(const profile::Profile& p) {
    json out{{"schema", "luftpause-profile/1"},
             {"piece", clean(p.piece)},
             {"performance",
              {{"label", words_or_null(p.label)},
               {"performer", words_or_null(p.performer)},
               {"source", words_or_null(p.source)},
               {"permission", words_or_null(p.permission)}}},
             {"duration_s", number(p.duration.value(), 3)},
             {"sung_s", number(p.sung.value(), 2)},
             {"counts",
              {{"notes", p.notes},
               {"breaths", p.breaths},
               {"phrases", p.phrases},
               {"switches", p.switches},
               {"left_out", p.left_out}}},
             {"listening", listening(p.listening)},
             {"range", range(p.range)},
             {"quarters_s", json::array()},
             {"headline", json::array()},
             {"strengths", findings(p.strengths)},
             {"watch", findings(p.watch)},
             {"practise", findings(p.practise)},
             {"drills", json::array()},
             {"facets", json::array()},
             {"cautions", cautions()}};
    for (const auto q : p.quarters)
        out["quarters_s"].push_back(number(q.value(), 2));
    for (const auto& sentence : p.headline)
        out["headline"].push_back(clean(sentence));
    for (const auto& d : p.drills) {
        json steps = json::array();
        for (const auto& step : d.steps)
            steps.push_back(clean(step));
        out["drills"].push_back({{"drill", d.key},
                                 {"title", clean(d.title)},
                                 {"aim", clean(d.aim)},
                                 {"steps", steps},
                                 {"caution", words_or_null(d.caution)}});
    }
    for (const auto& f : p.facets)
        out["facets"].push_back(facet(f));
    return shown_json(out.dump(2, ' ', false, json::error_handler_t::replace)) + "\n";
}

} // namespace luft::exports
