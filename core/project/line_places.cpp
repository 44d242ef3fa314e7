#include "project/line_places.h"

#include <algorithm>
#include <array>
#include <limits>

namespace luft::project {
namespace {

constexpr double kJoined = 2.5, kEmptyRun = 2, kEmptyNote = 0.15, kTied = 100;
constexpr double kLater = 1e-6; ///< an empty phrase costs this less for each one before it
constexpr std::size_t kMost = 3;
constexpr double kNever = std::numeric_limits<double>::infinity();

double mismatch(int asked, int sung) {
    const double off = sung - asked;
    return off * off / (off > 0 ? 2 : 1) / (sung + asked);
}

bool covers(const LineBlock& block, const std::optional<std::size_t>& phrase) {
    return !phrase || (*phrase >= block.phrase && *phrase < block.phrase + block.phrases);
}

double cost_of(const LineBlock& block, const std::vector<LineSize>& lines, const std::vector<int>& notes) {
    int asked = 0, sung = 0;
    double cost = kJoined * static_cast<double>(block.lines - 1 + block.phrases - 1);
    for (std::size_t i = block.line; i < block.line + block.lines; ++i) {
        asked += lines[i].notes;
        if (!covers(block, lines[i].first_tied) || !covers(block, lines[i].last_tied)) cost += kTied;
    }
    for (std::size_t j = block.phrase; j < block.phrase + block.phrases; ++j)
        sung += notes[j];
    return cost + mismatch(asked, sung);
}

/// The cheapest way to a place, and the step that led there.
struct Way {
    double cost = kNever;
    LineBlock block; ///< no lines: the phrase stays empty
    bool after_empty = false;
};

} // namespace

std::vector<LineBlock> places_on_phrases(const std::vector<LineSize>& lines, const std::vector<int>& notes) {
    const std::size_t m = lines.size(), n = notes.size();
    if (m == 0 || n == 0) return {};
    const std::size_t most = std::max(kMost, 2 * (m / n + 1) + 2); // lines in a block
    // ways[i][j]: i lines and j phrases are dealt with, [0] the last phrase was sung, [1] it stays empty.
    std::vector<std::vector<std::array<Way, 2>>> ways(m + 1, std::vector<std::array<Way, 2>>(n + 1));
    ways[0][0][0].cost = 0;
    const auto offer = [&](std::size_t i, std::size_t j, bool empty, const Way& way) {
        Way& best = ways[i][j][empty];
        if (way.cost < best.cost) best = way;
    };
    for (std::size_t i = 0; i <= m; ++i)
        for (std::size_t j = 0; j < n; ++j)
            for (const bool empty : {false, true}) {
                const double cost = ways[i][j][empty].cost;
                if (cost == kNever) continue;
                const double skip =
                    (empty ? 0 : kEmptyRun) + kEmptyNote * notes[j] - kLater * static_cast<double>(j);
                offer(i, j + 1, true, {cost + skip, {i, 0, j, 1}, empty});
                for (std::size_t a = 1; a <= most && i + a <= m; ++a)
                    for (std::size_t b = 1; b <= (a > kMost ? 1 : kMost) && j + b <= n; ++b) {
                        const LineBlock block{i, a, j, b};
                        offer(i + a, j + b, false, {cost + cost_of(block, lines, notes), block, empty});
                    }
            }
    std::vector<LineBlock> blocks;
    bool empty = ways[m][n][1].cost < ways[m][n][0].cost;
    for (std::size_t i = m, j = n; i > 0 || j > 0;) {
        const Way& way = ways[i][j][empty];
        if (way.block.lines > 0) blocks.push_back(way.block);
        i -= way.block.lines;
        j -= way.block.phrases;
        empty = way.after_empty;
    }
    std::ranges::reverse(blocks);
    return blocks;
}

} // namespace luft::project
