#include "matroska.h"

#include "pack.h"

#include <bit>

namespace luft::test {
namespace {

constexpr std::uint64_t kUnknown = 0x00FFFFFFFFFFFFFF;

std::string element(std::uint64_t id, int id_bytes, const std::string& inside) {
    return big(id, id_bytes) + big(1ULL << 28 | inside.size(), 4) + inside;
}

std::string number(std::uint64_t id, int id_bytes, std::uint64_t value) {
    return element(id, id_bytes, big(value, 8));
}

std::string open_end(std::uint64_t id) {
    return big(id, 4) + big(1ULL << 56 | kUnknown, 8);
}

} // namespace

std::string matroska(const std::vector<Block>& blocks, double rate, std::uint64_t ticks_ns) {
    const std::string header = element(0x4282, 2, "matroska") + number(0x4287, 2, 4) + number(0x4285, 2, 2);
    const std::string sound = element(0xB5, 1, big(std::bit_cast<std::uint64_t>(rate), 8)) +
                              number(0x9F, 1, 1) + number(0x6264, 2, 16);
    const std::string track = number(0xD7, 1, 1) + number(0x73C5, 2, 1) + number(0x83, 1, 2) +
                              element(0x86, 1, "A_PCM/INT/LIT") + element(0xE1, 1, sound);
    std::string all = element(0x1A45DFA3, 4, header) + open_end(0x18538067) +
                      element(0x1549A966, 4, number(0x2AD7B1, 3, ticks_ns)) +
                      element(0x1654AE6B, 4, element(0xAE, 1, track));
    const Block* last = nullptr;
    for (const Block& block : blocks) {
        if (!last || block.cluster_ms != last->cluster_ms)
            all += open_end(0x1F43B675) + number(0xE7, 1, block.cluster_ms);
        last = &block;
        const std::string inside =
            big(0x81, 1) + big(static_cast<std::uint16_t>(block.after_ms), 2) + big(0x80, 1) + block.samples;
        all += inside.size() < 127 ? big(0xA3, 1) + big(0x80 | inside.size(), 1) + inside
                                   : element(0xA3, 1, inside);
    }
    return all;
}

} // namespace luft::test
