#include "voice/contours.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr double kReachCents = 70;
constexpr double kMorePerSkip = 0.3; // of the reach
constexpr std::uint32_t kMostSkipped = 4;

struct Pair {
    double cents;
    std::size_t contour;   // place among the open ones
    std::size_t candidate; // place in its frame
};

} // namespace

std::vector<Contour> link_contours(const Lattice& lattice) {
    std::vector<Contour> contours;
    std::vector<std::size_t> open; // contours that may go on
    std::vector<Pair> pairs;
    std::vector<bool> taken;
    const auto all = lattice.all();
    std::uint32_t first = 0; // of the frame's candidates
    for (std::uint32_t i = 0; i < lattice.frames(); ++i) {
        const auto here = lattice.at(i);
        std::erase_if(open, [&](std::size_t c) { return i - contours[c].back().frame > kMostSkipped; });
        pairs.clear();
        for (std::size_t o = 0; o < open.size(); ++o) {
            const ContourPoint last = contours[open[o]].back();
            const double reach = kReachCents * (1 + kMorePerSkip * (i - last.frame - 1));
            for (std::size_t c = 0; c < here.size(); ++c)
                if (const double d =
                        std::abs(interval(Hertz(all[last.candidate].hz), Hertz(here[c].hz)).value());
                    d < reach)
                    pairs.push_back({d, o, c});
        }
        std::ranges::sort(pairs, {}, &Pair::cents);
        taken.assign(here.size(), false);
        for (const Pair& p : pairs) {
            Contour& contour = contours[open[p.contour]];
            if (taken[p.candidate] || contour.back().frame == i) continue;
            taken[p.candidate] = true;
            contour.push_back({i, first + static_cast<std::uint32_t>(p.candidate)});
        }
        for (std::size_t c = 0; c < here.size(); ++c)
            if (!taken[c]) {
                open.push_back(contours.size());
                contours.push_back({{i, first + static_cast<std::uint32_t>(c)}});
            }
        first += static_cast<std::uint32_t>(here.size());
    }
    return contours;
}

} // namespace luft::voice
