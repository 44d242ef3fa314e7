#include "boxes.h"

#include "pack.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace luft::test {
namespace {

constexpr std::array<std::string_view, 11> kHoldOthers = {"moov", "trak", "mdia", "minf", "stbl", "edts",
                                                          "dinf", "udta", "moof", "traf", "mvex"};

void walk(const std::string& bytes, std::size_t from, std::size_t to, std::size_t depth,
          std::vector<Box>& all) {
    while (from + 8 <= to) {
        const std::size_t size = big_at(bytes, from, 4);
        if (size < 8 || from + size > to) return;
        const std::string kind = bytes.substr(from + 4, 4);
        all.push_back({kind, from, size, depth});
        if (std::ranges::find(kHoldOthers, kind) != kHoldOthers.end())
            walk(bytes, from + 8, from + size, depth + 1, all);
        from += size;
    }
}

} // namespace

std::vector<Box> boxes_of(const std::string& bytes) {
    std::vector<Box> all;
    walk(bytes, 0, bytes.size(), 0, all);
    return all;
}

} // namespace luft::test
