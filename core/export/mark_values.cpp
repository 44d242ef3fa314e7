#include "export/mark_values.h"

#include "base/text.h"
#include "export/mark_words.h"

#include <cmath>

namespace luft::exports {
namespace {

using Json = nlohmann::ordered_json;

// Decimals that each kind of value is worth; more would be noise.
constexpr int kTimeDigits = 3;
constexpr int kCentsDigits = 1;
constexpr int kMidiDigits = 3;
constexpr int kLevelDigits = 2;
constexpr int kHertzDigits = 2;
constexpr int kShareDigits = 3;

/// Text as JSON can hold it.
Json text(std::string_view words) {
    return valid_utf8(words);
}

Json span_value(Span span) {
    return {{"start_s", number(span.start.value(), kTimeDigits)},
            {"end_s", number(span.end.value(), kTimeDigits)}};
}

Json vibrato_value(const std::optional<marks::Vibrato>& vibrato) {
    if (!vibrato) return nullptr;
    return {{"rate_hz", number(vibrato->rate.value(), kHertzDigits)},
            {"extent_cents", number(vibrato->extent.value(), kCentsDigits)},
            {"regularity", number(vibrato->regularity, kShareDigits)}};
}

Json vowel_value(const std::optional<marks::Vowel>& vowel) {
    if (!vowel) return {{"f1_hz", nullptr}, {"f2_hz", nullptr}, {"nearest", nullptr}};
    return {{"f1_hz", number(vowel->f1.value(), kHertzDigits)},
            {"f2_hz", number(vowel->f2.value(), kHertzDigits)},
            {"nearest", vowel->nearest.empty() ? Json(nullptr) : text(vowel->nearest)}};
}

Json dynamic_value(const std::optional<marks::Dynamic>& mark) {
    return mark ? Json(word(*mark)) : Json(nullptr);
}

Json level_value(const std::optional<marks::PhraseLevel>& level) {
    if (!level) return nullptr;
    return {{"shape", word(level->shape)},
            {"change_db", number(level->change.value(), kLevelDigits)},
            {"rise_db", number(level->rise.value(), kLevelDigits)},
            {"peak_at", level->peak_at ? number(*level->peak_at, kShareDigits) : Json(nullptr)},
            {"confidence", number(level->confidence.value, kShareDigits)}};
}

} // namespace

Json number(double value, int digits) {
    if (!std::isfinite(value)) return nullptr;
    const double scale = std::pow(10.0, digits);
    const double rounded = std::round(value * scale) / scale;
    return rounded == 0 ? 0.0 : rounded; // never -0
}

Json note_value(const marks::Note& note) {
    Json value = span_value(note.span);
    value["midi"] = number(note.pitch.value(), kMidiDigits);
    value["cents"] = number(note.cents.value(), kCentsDigits);
    value["vibrato"] = vibrato_value(note.vibrato);
    value["onset"] = {{"kind", word(note.onset.kind)},
                      {"confidence", number(note.onset.confidence.value, kShareDigits)},
                      {"why", text(note.onset.evidence)}};
    value["offset"] = {{"kind", word(note.offset.kind)},
                       {"confidence", number(note.offset.confidence.value, kShareDigits)},
                       {"why", text(note.offset.evidence)}};
    value["vowel"] = vowel_value(note.vowel);
    value["register"] = note.sung_in ? Json(word(*note.sung_in)) : Json(nullptr);
    value["level_db"] = number(note.level.value(), kLevelDigits);
    value["confidence"] = number(note.confidence.value, kShareDigits);
    value["drift_cents"] = number(note.drift.value(), kCentsDigits);
    value["scoop_cents"] = number(note.scoop, kCentsDigits);
    value["level_change_db"] = number(note.level_change.value(), kLevelDigits);
    value["level_shape"] = word(note.shape);
    value["dynamic"] = dynamic_value(note.dynamic);
    value["why"] = text(note.evidence);
    return value;
}

Json breath_value(const marks::Breath& breath) {
    Json value = span_value(breath.span);
    value["evidence"] = word(breath.evidence_kind);
    value["confidence"] = number(breath.confidence.value, kShareDigits);
    value["inside_phrase"] = breath.inside_phrase;
    value["below_voice_db"] = number(breath.below_voice, kLevelDigits);
    value["why"] = text(breath.evidence);
    return value;
}

Json phrase_value(const marks::Phrase& phrase) {
    Json value = span_value(phrase.span);
    value["confidence"] = number(phrase.confidence.value, kShareDigits);
    value["level"] = level_value(phrase.level);
    value["dynamic"] = dynamic_value(phrase.dynamic);
    value["why"] = text(phrase.evidence);
    return value;
}

Json switch_value(const marks::Switch& change) {
    return {{"time_s", number(change.time.value(), kTimeDigits)},
            {"from", word(change.from)},
            {"to", word(change.to)},
            {"confidence", number(change.confidence.value, kShareDigits)},
            {"leap", change.leap},
            {"why", text(change.evidence)}};
}

} // namespace luft::exports
