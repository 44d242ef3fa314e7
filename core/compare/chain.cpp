#include "compare/chain.h"

#include <algorithm>

namespace luft::compare {
namespace {

constexpr std::size_t kNone = static_cast<std::size_t>(-1);

struct Best {
    double weight = 0;
    std::size_t link = kNone;
};

/// Heaviest chain that ends before a place (Fenwick 1994, kept for maxima).
class Maxima {
  public:
    explicit Maxima(std::size_t width) : tree_(width + 1) {}
    [[nodiscard]] Best before(std::size_t b) const {
        Best best;
        for (; b > 0; b -= b & (~b + 1))
            if (tree_[b].weight > best.weight) best = tree_[b];
        return best;
    }
    void put(std::size_t b, Best value) {
        for (++b; b < tree_.size(); b += b & (~b + 1))
            if (value.weight > tree_[b].weight) tree_[b] = value;
    }

  private:
    std::vector<Best> tree_;
};

} // namespace

std::vector<Link> heaviest_chain(const std::vector<Link>& links, std::size_t width) {
    Maxima maxima(width);
    std::vector<Best> reached(links.size()); // weight up to and with the link, and the link before it
    for (std::size_t from = 0, to = 0; from < links.size(); from = to) {
        while (to < links.size() && links[to].a == links[from].a) {
            reached[to] = maxima.before(links[to].b);
            reached[to].weight += links[to].weight;
            ++to;
        }
        for (std::size_t k = from; k < to; ++k) // only now: one `a` is used once
            maxima.put(links[k].b, {reached[k].weight, k});
    }
    std::vector<Link> out;
    for (std::size_t k = maxima.before(width).link; k != kNone; k = reached[k].link)
        out.push_back(links[k]);
    std::ranges::reverse(out);
    return out;
}

} // namespace luft::compare
