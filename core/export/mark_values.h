// Marks as JSON values, shared by the analysis and the list of marks.
#pragma once

#include "project/model.h"

#include <nlohmann/json.hpp>

#include <optional>

namespace luft::exports {

/// A number with at most `digits` decimals; null when it isn't finite.
nlohmann::ordered_json number(double value, int digits);

/// The bare number of a quantity, or null.
template <class Unit>
nlohmann::ordered_json number(const std::optional<Unit>& value, int digits) {
    return value ? number(value->value(), digits) : nlohmann::ordered_json(nullptr);
}

/// Objects as the schema `luftpause-analysis/1` has them; `number` above for every value. Keys beyond the
/// schema: `why` (the evidence in words), and for notes `drift_cents`, `scoop_cents`, `level_change_db`,
/// `level_shape`, and the vowel's `nearest`; for notes and phrases `dynamic` ("pp" to "ff" in the singer's
/// own range, or null); for phrases `level`: null or {`shape`, `change_db`, `rise_db`, `peak_at` (share of
/// the phrase, or null), `confidence`}, see marks/phrase_levels.h.
nlohmann::ordered_json note_value(const marks::Note& note);
nlohmann::ordered_json breath_value(const marks::Breath& breath);
nlohmann::ordered_json phrase_value(const marks::Phrase& phrase);
nlohmann::ordered_json switch_value(const marks::Switch& change);

} // namespace luft::exports
