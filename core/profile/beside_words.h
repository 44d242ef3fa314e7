// Figures of a side-by-side in words.
#pragma once

#include "profile/beside.h"

#include <string>
#include <vector>

namespace luft::profile {

/// A cell's figure: "5.4 Hz", "A4", "29 %"; empty where the performance has none.
std::string cell_text(const BesideRow& row, const BesideCell& cell);

/// What a figure rests on: "5.2 to 5.6, 12 values", "12 of 42 note starts"; empty where there is none.
std::string basis_text(const BesideRow& row, const BesideCell& cell);

/// Why a figure stands out, against the others that it was held against: "Vibrato: rate higher, 6.2 Hz;
/// early 5.4 Hz."
std::string stands_words(const Beside& all, const BesideFacet& facet, const BesideRow& row,
                         std::size_t column);

/// "measured", "a hint only", "the coach's judgement".
std::string basis_words(vocabulary::Basis basis);

/// What holds for the whole: a name, and a text for each performance, empty where there is none.
struct WholeRow {
    std::string name;
    std::vector<std::string> cells;
};
std::vector<WholeRow> whole_rows(const Beside& all);

/// Sentences on what makes figures of these performances hard to set side by side; none where nothing does.
std::vector<std::string> unlike_conditions(const Beside& all);

/// Said of a performance of which nothing stands out.
std::string nothing_stands_out();

/// How it was decided what stands out, and what the report's signs for it say; for the foot of a report.
std::string beside_rule(const std::string& higher, const std::string& lower);

/// What the ranges of `basis_text` are.
std::string range_rule();

} // namespace luft::profile
