#include "export/analysis_json.h"

#include "base/shown_text.h"
#include "base/text.h"
#include "export/mark_values.h"
#include "export/mark_words.h"

#include <cmath>

namespace luft::exports {
namespace {

using Json = nlohmann::ordered_json;

/// A curve's numbers are written straight into the text: an hour has 360,000 of each.
template <class Unit>
void add_curve(std::string& out, std::string_view key, const Curve<Unit>& curve, int digits) {
    out += "\n    \"" + std::string(key) + "\": [";
    bool first = true;
    for (const float value : curve.raw()) {
        if (!first) out += ',';
        first = false;
        out += std::isfinite(value) ? fixed(static_cast<double>(value), digits) : "null";
    }
    out += "],";
}

/// Straight into the text as well: of a day they are 300 MB, which no copy should be made of.
void add_curves(std::string& out, const voice::Curves& curves) {
    out += ",\n  \"curves\": {";
    add_curve(out, "f0_hz", curves.f0, 2);
    add_curve(out, "voicing", curves.voicing, 3);
    add_curve(out, "loudness_lufs", curves.loudness, 2);
    add_curve(out, "level_db", curves.level, 2);
    add_curve(out, "cpp_db", curves.cpp, 2);
    add_curve(out, "h1h2_db", curves.h1h2, 2);
    add_curve(out, "ring_db", curves.ring, 2);
    add_curve(out, "centroid_hz", curves.centroid, 1);
    add_curve(out, "f1_hz", curves.f1, 1);
    add_curve(out, "f2_hz", curves.f2, 1);
    add_curve(out, "head_register", curves.head_register, 3);
    add_curve(out, "hnr_db", curves.hnr, 2);
    add_curve(out, "alpha_db", curves.alpha, 2);
    add_curve(out, "f3_hz", curves.f3, 1);
    out.back() = '}'; // the last comma
}

Json media_value(const marks::Analysis& analysis, const project::MediaFacts& facts) {
    Json frame_rate = nullptr;
    if (facts.has_video && facts.frame_rate_num > 0 && facts.frame_rate_den > 0)
        frame_rate =
            number(static_cast<double>(facts.frame_rate_num) / static_cast<double>(facts.frame_rate_den), 5);
    return {{"duration_s", number(analysis.duration.value(), 3)},
            {"sample_rate_hz", facts.sample_rate_hz > 0 ? Json(facts.sample_rate_hz) : Json(nullptr)},
            {"channels", facts.channels > 0 ? Json(facts.channels) : Json(nullptr)},
            {"has_video", facts.has_video},
            {"frame_rate", frame_rate}};
}

Json loudness_value(const voice::Loudness& loudness) {
    return {{"integrated_lufs", number(loudness.integrated, 2)},
            {"range_lu", number(loudness.range, 2)},
            {"true_peak_dbtp", number(loudness.true_peak, 2)}};
}

/// A list with one mark a line.
template <class Mark>
std::string list_text(const std::vector<Mark>& marks, Json (*value)(const Mark&)) {
    std::string out = "[";
    for (const Mark& mark : marks)
        out += (out.size() > 1 ? ",\n    " : "\n    ") + shown_json(value(mark).dump());
    return out + "]";
}

} // namespace

std::string analysis_json(const marks::Analysis& analysis, const project::MediaFacts& facts) {
    std::string out = "{";
    const auto member = [&](std::string_view key, const std::string& value) {
        out += (out.size() > 1 ? ",\n  \"" : "\n  \"") + std::string(key) + "\": " + value;
    };
    member("schema", "\"luftpause-analysis/1\"");
    member("hop_s", fixed(kHop.value(), 3));
    member("tuning_hz", number(analysis.tuning.value(), 2).dump());
    member("media", media_value(analysis, facts).dump());
    member("loudness", loudness_value(analysis.loudness).dump());
    member("setting", Json(word(analysis.setting)).dump());
    member("one_register", analysis.one_register ? "true" : "false");
    add_curves(out, analysis.curves);
    member("breaths", list_text(analysis.breaths, breath_value));
    member("phrases", list_text(analysis.phrases, phrase_value));
    member("switches", list_text(analysis.switches, switch_value));
    member("notes", list_text(analysis.notes, note_value));
    out += "\n}\n";
    return out;
}

} // namespace luft::exports
