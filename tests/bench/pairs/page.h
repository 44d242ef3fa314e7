// The page that the benchmark of aligning writes.
#pragma once

#include "bench/pairs/cost.h"
#include "bench/pairs/groups.h"

#include <string>

namespace luft::bench {

struct PairResults {
    std::vector<PairRow> warped, voices, bands; ///< may be empty
    std::vector<Cost> costs;
};

/// Figures, verdict and the published ones beside, in Markdown. Every number of ours was computed in this
/// run.
std::string pairs_page(const PairWork& work, const PairResults& results);

} // namespace luft::bench
