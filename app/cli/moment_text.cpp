#include "cli/moment_text.h"

#include "base/text.h"
#include "cli/table.h"
#include "export/mark_words.h"

namespace luft::cli {
namespace {

constexpr int kIndent = 6;

std::string shades_text(const project::Moment& moment) {
    std::string text;
    for (const vocabulary::Tag& tag : moment.shades)
        text += (text.empty() ? "" : ", ") + vocabulary::tag_text(tag);
    return text;
}

} // namespace

std::string_view word(project::Verdict verdict) {
    switch (verdict) {
    case project::Verdict::strength:
        return "strength";
    case project::Verdict::watch:
        return "watch";
    case project::Verdict::explain:
        return "explain";
    }
    return {};
}

std::string moment_text(const project::Moment& moment, const Labels& labels) {
    std::string id = std::to_string(moment.id.value);
    if (id.size() < 4) id.insert(0, 4 - id.size(), ' ');
    std::string text = id + "  " + clock_text(moment.span.start) + "-" + clock_text(moment.span.end) + "  " +
                       std::string(exports::word(moment.state)) + "  " + std::string(word(moment.verdict)) +
                       "  " + one_line(shades_text(moment)) + "\n";
    if (moment.beside) text += paragraph("Beside " + quote_text(*moment.beside, labels), kIndent);
    if (!moment.remark.empty()) text += paragraph("\"" + moment.remark + "\"", kIndent);
    if (!moment.evidence.empty()) text += paragraph(moment.evidence, kIndent);
    if (!moment.drill.empty()) text += paragraph("Drill: " + moment.drill, kIndent);
    return text;
}

std::string moment_name(const project::Moment& moment) {
    return "moment " + std::to_string(moment.id.value) + " at " + clock_text(moment.span.start);
}

Json moment_value(const project::Moment& moment, const Labels& labels) {
    Json shades = Json::array();
    for (const vocabulary::Tag& tag : moment.shades)
        shades.push_back(vocabulary::tag_text(tag));
    return {{"id", moment.id.value},
            {"start_s", moment.span.start.value()},
            {"end_s", moment.span.end.value()},
            {"state", exports::word(moment.state)},
            {"origin", exports::word(moment.origin)},
            {"verdict", word(moment.verdict)},
            {"shades", shades},
            {"remark", moment.remark},
            {"evidence", moment.evidence},
            {"confidence", moment.confidence.value},
            {"drill", moment.drill.empty() ? Json(nullptr) : Json(moment.drill)},
            {"beside", quote_value(moment.beside, labels)}};
}

} // namespace luft::cli
