// Bytes changed and files cut off at random places, in every container.
#include "made.h"
#include "trial.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace luft::test;

namespace {

std::string changed(std::string bytes, unsigned seed) {
    std::mt19937 random(seed);
    // Half of them in the header, where a byte says most.
    const std::size_t reach = seed % 2 == 0 ? std::min<std::size_t>(bytes.size(), 700) : bytes.size();
    for (unsigned i = 1 + random() % 16; i > 0; --i)
        bytes[random() % reach] = static_cast<char>(random());
    if (seed % 5 == 0) bytes.resize(random() % bytes.size());
    return bytes;
}

} // namespace

TEST_CASE(
    "recordings of every container with random damage are refused or taken in bounded time and memory") {
    const std::vector<Made> all = one_of_each();
    Trials trials("Recordings with bytes changed or cut off at random",
                  std::to_string(all.size()) +
                      " containers, 1 to 16 bytes changed, every fifth file cut off as well");
    const int each = runs(0, 40);
    for (std::size_t i = 0; i < all.size(); ++i) {
        // The short version does one change of every fourth container.
        const unsigned first = static_cast<unsigned>(1000 * i);
        if (!long_runs() && i % 4 == 0)
            trials.give(all[i].name, all[i].name + ", seed " + std::to_string(first + 5),
                        changed(all[i].bytes, first + 5));
        for (int n = 0; n < each; ++n) {
            const unsigned seed = first + static_cast<unsigned>(n);
            trials.give(all[i].name, all[i].name + ", seed " + std::to_string(seed),
                        changed(all[i].bytes, seed));
        }
    }
    WARN(trials.figures());
}
