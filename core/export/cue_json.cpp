#include "export/cue_json.h"

#include "base/shown_text.h"
#include "base/text.h"
#include "export/cue_rows.h"
#include "export/cue_time.h"
#include "script/others.h"

#include <nlohmann/json.hpp>

namespace luft::exports {
namespace {

using Json = nlohmann::ordered_json;

Json media_time(const script::CueSheet& sheet, Rational t) {
    return {{"exact", fraction(t)}, {"seconds", t.as_double()}, {"frame", (t * sheet.frame_rate).round()}};
}

Json programme_time(const script::CueSheet& sheet, Rational t) {
    Json out = media_time(sheet, t);
    out["timecode"] = programme_timecode(sheet, t);
    return out;
}

Json id_or_null(std::int64_t id) {
    return id == 0 ? Json(nullptr) : Json(id);
}

const char* word(script::WarningKind kind) {
    using enum script::WarningKind;
    switch (kind) {
    case aside_on_singing:
        return "aside_on_singing";
    case stop_in_note:
        return "stop_in_note";
    case stops_too_close:
        return "stops_too_close";
    case quote_too_long:
        return "quote_too_long";
    case share_too_large:
        return "share_too_large";
    case stop_outside:
        return "stop_outside";
    case quote_outside:
        return "quote_outside";
    case aside_cut_off:
        break;
    }
    return "aside_cut_off";
}

Json performance(const project::Performance& p) {
    return {{"label", p.label},
            {"performer", p.performer},
            {"source", p.source},
            {"permission", p.permission},
            {"duration_s", p.facts.duration.value()}};
}

Json others(const script::Source& source, const script::CueSheet& sheet) {
    Json out = Json::array();
    for (const auto& other : sheet.others) {
        Json one = performance(script::other_of(source, other.performance)->performance);
        one["quoted"] = programme_time(sheet, other.quoted);
        one["quoted_once"] = programme_time(sheet, other.quoted_once);
        one["longest_quote"] = programme_time(sheet, other.longest_quote);
        one["quoted_share"] = other.quoted_share;
        out.push_back(std::move(one));
    }
    return out;
}

Json segments(const script::Source& source, const script::CueSheet& sheet) {
    Json out = Json::array();
    for (const auto& s : sheet.segments)
        out.push_back(
            {{"number", out.size() + 1},
             {"kind", kind_word({&s, nullptr})},
             {"title", s.title},
             {"stop", id_or_null(s.stop_number)},
             {"item", s.item ? id_or_null(s.item->value) : Json(nullptr)},
             {"programme",
              {{"in", programme_time(sheet, s.programme_start)},
               {"out", programme_time(sheet, s.programme_end)}}},
             {"media", {{"in", media_time(sheet, s.media_start)}, {"out", media_time(sheet, s.media_end)}}},
             {"speed", fraction(s.speed)},
             {"performance", script::performance_of(source, s).label},
             {"text", s.text}});
    return out;
}

Json asides(const script::CueSheet& sheet) {
    Json out = Json::array();
    for (const auto& a : sheet.asides)
        out.push_back({{"item", id_or_null(a.item.value)},
                       {"programme",
                        {{"in", programme_time(sheet, a.programme_start)},
                         {"out", programme_time(sheet, a.programme_end)}}},
                       {"media_in_s", a.media_start.value()},
                       {"text", a.text}});
    return out;
}

Json warnings(const script::CueSheet& sheet) {
    Json out = Json::array();
    for (const auto& w : sheet.warnings)
        out.push_back({{"kind", word(w.kind)},
                       {"item", id_or_null(w.item.value)},
                       {"words", w.words},
                       {"remedy_s", w.remedy ? Json(w.remedy->value()) : Json(nullptr)}});
    return out;
}

} // namespace

std::string cue_json(const script::Source& source, const script::CueSheet& sheet) {
    const Json out = {{"schema", "luftpause-cues/1"},
                      {"piece", {{"title", source.piece.title}, {"writer", source.piece.writer}}},
                      {"performance", performance(source.performance)},
                      {"frame_rate", fraction(sheet.frame_rate)},
                      {"drop_frame", sheet.drop_frame},
                      {"running_time", programme_time(sheet, sheet.running_time)},
                      {"talk_time", programme_time(sheet, sheet.talk_time)},
                      {"quoted", programme_time(sheet, sheet.quoted)},
                      {"quoted_once", programme_time(sheet, sheet.quoted_once)},
                      {"longest_quote", programme_time(sheet, sheet.longest_quote)},
                      {"quoted_share", sheet.quoted_share},
                      {"others", others(source, sheet)},
                      {"segments", segments(source, sheet)},
                      {"asides", asides(sheet)},
                      {"warnings", warnings(sheet)}};
    return shown_json(out.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}

} // namespace luft::exports
