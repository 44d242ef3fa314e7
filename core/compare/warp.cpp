#include "compare/warp.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace luft::compare {
namespace {

constexpr float kNever = std::numeric_limits<float>::infinity();
constexpr float kStretch = 0.5F; // more unlikeness on one-sided steps; tuned as kAlone
constexpr Seconds kOpening{2};   // cost of a gap's opening, in seconds of full unlikeness; tuned as kAlone

/// How a corner was reached, in each of its three states.
enum Together : std::uint8_t { from_together = 0, from_a = 1, from_b = 2, by_a = 3, by_b = 4, began = 5 };
enum Alone : std::uint8_t { opened = 0, went_on = 1, turned = 2 }; ///< turned: from the other side's gap

struct State {
    float together = kNever, a_alone = kNever, b_alone = kNever;
    [[nodiscard]] float least() const { return std::min({together, a_alone, b_alone}); }
};

struct Row {
    std::int32_t first = 0;
    std::vector<State> states;
    [[nodiscard]] State at(std::int32_t j) const {
        const auto k = static_cast<std::size_t>(j - first);
        return j < first || k >= states.size() ? State{} : states[k];
    }
};

class Warp {
  public:
    Warp(const Columns& a, const Columns& b, const Band& band, bool free_start, bool free_end)
        : a_(a), b_(b), band_(band), free_start_(free_start), free_end_(free_end),
          rows_(static_cast<std::int32_t>(a.all.size())), width_(static_cast<std::int32_t>(b.all.size())),
          hop_(static_cast<float>(a.hop.value())) {}

    Warping run() {
        offset_.reserve(band_.size() + 1);
        std::size_t corners = 0;
        for (const auto& [first, last] : band_) {
            offset_.push_back(corners);
            corners += static_cast<std::size_t>(last - first + 1);
        }
        how_.assign(corners, 0);
        for (std::int32_t i = 0; i <= rows_; ++i)
            fill(i);
        return {walk_back(), cost()};
    }

  private:
    void fill(std::int32_t i) {
        const auto [first, last] = band_[static_cast<std::size_t>(i)];
        now_.first = first;
        now_.states.assign(static_cast<std::size_t>(last - first + 1), State{});
        State left;
        for (std::int32_t j = first; j <= last; ++j) {
            const State up = i > 0 ? above_.at(j) : State{}, corner = i > 0 ? above_.at(j - 1) : State{};
            left = reach(i, j, up, left, corner);
            now_.states[static_cast<std::size_t>(j - first)] = left;
        }
        std::swap(now_, above_);
    }

    State reach(std::int32_t i, std::int32_t j, const State& up, const State& left, const State& corner) {
        State s;
        std::uint8_t how = 0;
        if (i == 0 && j == 0) {
            s.together = 0;
            how = began;
        } else if (i > 0 && j > 0) {
            const float unlike =
                unlikeness(a_.all[static_cast<std::size_t>(i - 1)], b_.all[static_cast<std::size_t>(j - 1)]);
            const float both = unlike * hop_, one = 0.5F * (unlike + kStretch) * hop_;
            const float ways[] = {corner.together + both, corner.a_alone + both, corner.b_alone + both,
                                  up.together + one, left.together + one};
            const auto* best = std::min_element(std::begin(ways), std::end(ways));
            s.together = *best;
            how = static_cast<std::uint8_t>(best - std::begin(ways));
        }
        const auto gap = static_cast<float>(kAlone * 0.5) * hop_;
        const bool free_a = (j == 0 && free_start_) || (j == width_ && free_end_);
        const bool free_b = (i == 0 && free_start_) || (i == rows_ && free_end_);
        how |= static_cast<std::uint8_t>(step_alone(s.a_alone, up.together, up.a_alone, up.b_alone, free_a)
                                         << 3);
        how |= static_cast<std::uint8_t>(
            step_alone(s.b_alone, left.together, left.b_alone, left.a_alone, free_b) << 5);
        s.a_alone += gap;
        s.b_alone += gap;
        how_[offset_[static_cast<std::size_t>(i)] +
             static_cast<std::size_t>(j - band_[static_cast<std::size_t>(i)].first)] = how;
        return s;
    }

    static std::uint8_t step_alone(float& to, float together, float same, float other, bool free) {
        const float ways[] = {together + (free ? 0 : static_cast<float>(kOpening.value() * kAlone)), same,
                              other};
        const auto* best = std::min_element(std::begin(ways), std::end(ways));
        to = *best;
        return static_cast<std::uint8_t>(best - std::begin(ways));
    }

    [[nodiscard]] double cost() const {
        const double length = 0.5 * (rows_ + width_) * a_.hop.value();
        return length > 0 ? static_cast<double>(above_.at(width_).least()) / length : 0;
    }

    [[nodiscard]] std::vector<Cell> walk_back() const {
        std::vector<Cell> path;
        std::int32_t i = rows_, j = width_;
        const State end = above_.at(j);
        auto kind = end.together <= end.least()  ? Cell::Kind::together
                    : end.a_alone <= end.least() ? Cell::Kind::a_alone
                                                 : Cell::Kind::b_alone;
        while (i > 0 || j > 0) {
            const std::uint8_t how =
                how_[offset_[static_cast<std::size_t>(i)] +
                     static_cast<std::size_t>(j - band_[static_cast<std::size_t>(i)].first)];
            path.push_back({std::max(0, i - 1), std::max(0, j - 1), kind});
            if (kind == Cell::Kind::together) {
                const auto way = static_cast<Together>(how & 7);
                if (way == began) break;
                if (way != by_b) --i;
                if (way != by_a) --j;
                if (way == from_a) kind = Cell::Kind::a_alone;
                if (way == from_b) kind = Cell::Kind::b_alone;
            } else {
                const bool of_a = kind == Cell::Kind::a_alone;
                const auto way = static_cast<Alone>(how >> (of_a ? 3 : 5) & 3);
                --(of_a ? i : j);
                if (way == opened) kind = Cell::Kind::together;
                if (way == turned) kind = of_a ? Cell::Kind::b_alone : Cell::Kind::a_alone;
            }
        }
        std::ranges::reverse(path);
        return path;
    }

    const Columns &a_, &b_;
    const Band& band_;
    bool free_start_, free_end_;
    std::int32_t rows_, width_;
    float hop_;
    Row now_, above_;
    std::vector<std::size_t> offset_;
    std::vector<std::uint8_t> how_;
};

} // namespace

Warping warp(const Columns& a, const Columns& b, const Band& band, bool free_start, bool free_end) {
    return Warp(a, b, band, free_start, free_end).run();
}

Band whole(const Columns& a, const Columns& b) {
    return Band(a.all.size() + 1, {0, static_cast<std::int32_t>(b.all.size())});
}

Band around_path(const Warping& coarse, Seconds coarse_hop, const Columns& a, const Columns& b,
                 Seconds around) {
    const double finer = coarse_hop / a.hop;
    const auto rows = static_cast<std::int32_t>(a.all.size()),
               width = static_cast<std::int32_t>(b.all.size());
    const auto reach = static_cast<std::int32_t>(std::ceil(around / a.hop));
    Band band(a.all.size() + 1, {width, 0});
    const auto allow = [&](std::int32_t from, std::int32_t to, std::int32_t first, std::int32_t last) {
        for (std::int32_t i = std::max(0, from); i <= std::min(rows, to); ++i) {
            auto& [low, high] = band[static_cast<std::size_t>(i)];
            low = std::min(low, std::max(0, first));
            high = std::max(high, std::min(width, last));
        }
    };
    // A square of the coarse cell and `around` it; runs along one row are spread over the rows beside them
    // only once.
    for (const Cell& c : coarse.path) {
        const auto i = static_cast<std::int32_t>(c.a * finer), j = static_cast<std::int32_t>(c.b * finer);
        const auto side = static_cast<std::int32_t>(std::ceil(finer));
        allow(i - reach, i + side + reach, j - reach, j + side + reach);
    }
    allow(0, 0, 0, 0);
    allow(rows, rows, width, width);
    for (std::size_t i = 1; i < band.size(); ++i) { // borders rise, rows overlap
        band[i].second = std::max(band[i].second, band[i - 1].second);
    }
    for (std::size_t i = band.size() - 1; i-- > 0;)
        band[i].first = std::min(band[i].first, band[i + 1].first);
    for (std::size_t i = 1; i < band.size(); ++i)
        band[i].first = std::min(band[i].first, band[i - 1].second);
    return band;
}

} // namespace luft::compare
