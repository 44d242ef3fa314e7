// What stands beside two performances in words.
#pragma once

#include "sheet/pair_rows.h"

#include <string>
#include <vector>

namespace luft::sheet {

/// A difference in two to four words: "breath saved", "38 cents lower". B is meant.
std::string short_words(const compare::Difference& difference);

/// The numbers of differences, from 1 in their order; 0 for those of the whole.
std::vector<int> pair_numbers(const std::vector<compare::Difference>& differences);

/// Over the rows: who stands where and in which key; then what holds for the whole, if anything does.
std::vector<std::string> pair_head(const PairSource& source, bool as_sung);

} // namespace luft::sheet
