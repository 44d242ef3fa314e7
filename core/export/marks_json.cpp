#include "export/marks_json.h"

#include "base/shown_text.h"
#include "base/text.h"
#include "export/mark_values.h"
#include "export/mark_words.h"

namespace luft::exports {
namespace {

using Json = nlohmann::ordered_json;

struct ValueOf {
    Json operator()(const marks::Note& note) const { return note_value(note); }
    Json operator()(const marks::Breath& breath) const { return breath_value(breath); }
    Json operator()(const marks::Phrase& phrase) const { return phrase_value(phrase); }
    Json operator()(const marks::Switch& change) const { return switch_value(change); }
};

Json mark_value(const project::Mark& mark) {
    Json value = {{"id", mark.id.value},
                  {"kind", word(mark.kind())},
                  {"state", word(mark.state)},
                  {"origin", word(mark.origin)}};
    value.update(std::visit(ValueOf{}, mark.what));
    return value;
}

Json word_value(const project::SungWord& one) {
    constexpr int kMilliseconds = 3;
    return {{"text", valid_utf8(one.text)},
            {"joins", one.joins},
            {"time_s", number(one.at.value(), kMilliseconds)},
            {"placed", one.placed}};
}

} // namespace

std::string marks_json(const project::Performance& performance, const std::vector<project::Mark>& marks,
                       const std::vector<project::SungWord>& words) {
    std::string out = "{\n  \"schema\": \"luftpause-marks/1\",\n  \"performance\": " +
                      Json(valid_utf8(performance.label)).dump() +
                      ",\n  \"performer\": " + Json(valid_utf8(performance.performer)).dump() +
                      ",\n  \"marks\": [";
    bool first = true;
    for (const project::Mark& mark : marks) {
        out += (first ? "\n    " : ",\n    ") + mark_value(mark).dump();
        first = false;
    }
    out += "]";
    if (words.empty()) return shown_json(out + "\n}\n");
    out += ",\n  \"sung_words\": [";
    first = true;
    for (const project::SungWord& one : words) {
        out += (first ? "\n    " : ",\n    ") + word_value(one).dump();
        first = false;
    }
    return shown_json(out + "]\n}\n");
}

} // namespace luft::exports
