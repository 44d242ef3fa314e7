// The best selection of pairs that keeps the order on both sides.
#pragma once

#include <cstddef>
#include <vector>

namespace luft::compare {

/// Item `a` of one row with item `b` of another, and how well they fit (above 0).
struct Link {
    std::size_t a = 0, b = 0;
    double weight = 0;
};

/// The links of greatest total weight of which each is later than the one before on both sides: the heaviest
/// increasing subsequence (Jacobson & Vo 1992, Combinatorial Pattern Matching), with running maxima in a
/// Fenwick tree. `links` in order of a; b under `width`. Time goes with the number of links times its
/// logarithm.
std::vector<Link> heaviest_chain(const std::vector<Link>& links, std::size_t width);

} // namespace luft::compare
