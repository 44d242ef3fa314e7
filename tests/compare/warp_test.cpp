// The dynamic programming itself, against trying every way.
#include "compare/chain.h"
#include "compare/warp.h"
#include "singer/random.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::compare;

namespace {

Columns by_chance(singer::Random& random, std::size_t count) {
    Columns out{Seconds(0), Seconds(0.25), std::vector<Column>(count)};
    for (Column& c : out.all) {
        if (random.uniform() < 0.3) continue;
        c.voiced = 1;
        c.sung[static_cast<std::size_t>(random.uniform() * 4)] = 1;
    }
    return out;
}

/// The heaviest chain from link `k` on, by trying all.
double heaviest(const std::vector<Link>& links, std::size_t k, const Link* last) {
    if (k == links.size()) return 0;
    double best = heaviest(links, k + 1, last);
    if (!last || (links[k].a > last->a && links[k].b > last->b))
        best = std::max(best, links[k].weight + heaviest(links, k + 1, &links[k]));
    return best;
}

} // namespace

TEST_CASE("a performance against itself is the diagonal") {
    singer::Random random(5);
    const Columns columns = by_chance(random, 60);
    const Warping found = warp(columns, columns, whole(columns, columns), true, true);
    REQUIRE(found.path.size() == 60);
    for (const Cell& c : found.path) {
        CHECK(c.kind == Cell::Kind::together);
        CHECK(c.a == c.b);
    }
}

TEST_CASE("every column is on the path once or more, in order") {
    singer::Random random(6);
    for (int round = 0; round < 20; ++round) {
        const Columns a = by_chance(random, 30), b = by_chance(random, 45);
        std::vector<int> seen_a(30), seen_b(45);
        const Cell* before = nullptr;
        const Warping found = warp(a, b, whole(a, b), true, true);
        for (const Cell& c : found.path) {
            if (c.kind != Cell::Kind::b_alone) ++seen_a[static_cast<std::size_t>(c.a)];
            if (c.kind != Cell::Kind::a_alone) ++seen_b[static_cast<std::size_t>(c.b)];
            if (before) CHECK((c.a >= before->a && c.b >= before->b));
            before = &c;
        }
        CHECK(std::ranges::count(seen_a, 0) == 0);
        CHECK(std::ranges::count(seen_b, 0) == 0);
    }
}

TEST_CASE("a band that holds the best path finds the same cost as looking everywhere") {
    singer::Random random(7);
    for (int round = 0; round < 20; ++round) {
        const Columns a = by_chance(random, 40), b = by_chance(random, 30);
        const Warping all = warp(a, b, whole(a, b), true, true);
        const Warping again = warp(a, b, around_path(all, a.hop, a, b, Seconds(0)), true, true);
        CHECK(again.cost == Approx(all.cost).margin(1e-6));
    }
}

TEST_CASE("what costs more together than alone stays alone") {
    Columns a{Seconds(0), Seconds(0.25), std::vector<Column>(40)}, b = a;
    for (Column& c : a.all)
        c.voiced = 1, c.sung[0] = 1;
    for (Column& c : b.all)
        c.voiced = 1, c.sung[6] = 1;
    const Warping found = warp(a, b, whole(a, b), true, true);
    for (const Cell& c : found.path)
        CHECK(c.kind != Cell::Kind::together);
    CHECK(found.cost == Approx(kAlone).epsilon(0.01));
}

TEST_CASE("the heaviest chain is as heavy as the heaviest of all that there are") {
    singer::Random random(8);
    for (int round = 0; round < 50; ++round) {
        std::vector<Link> links;
        for (std::size_t a = 0; a < 5; ++a)
            for (std::size_t b = 0; b < 5; ++b)
                if (random.uniform() < 0.6) links.push_back({a, b, 0.1 + random.uniform()});
        double weight = 0;
        const Link* before = nullptr;
        const std::vector<Link> chain = heaviest_chain(links, 5);
        for (const Link& link : chain) {
            if (before) CHECK((link.a > before->a && link.b > before->b));
            weight += link.weight;
            before = &link;
        }
        CHECK(weight == Approx(heaviest(links, 0, nullptr)));
    }
}
