// Sound in millions of packets of a sample or none, and short files that hold days of silence.
#include "boxes.h"
#include "made.h"
#include "matroska.h"
#include "pack.h"
#include "trial.h"

#include <catch2/catch.hpp>

using namespace luft::test;

namespace {

int many() {
    return runs(20'000, 1'000'000);
}

std::string one_sample_a_block() {
    std::vector<Block> blocks;
    for (int i = 0; i < many(); ++i)
        blocks.push_back({static_cast<std::uint64_t>(i / 320 * 40), static_cast<std::int16_t>(i % 320 / 8),
                          little(static_cast<std::uint64_t>(i * 97 % 6000), 2)});
    return matroska(blocks);
}

std::string empty_blocks() {
    return matroska(std::vector<Block>(static_cast<std::size_t>(many()), Block{0, 0, ""}));
}

/// ISO/IEC 13818-7, 6.2: a header of 7 bytes says that the frame is 7 bytes long.
std::string empty_adts() {
    std::string all;
    for (int i = 0; i < many(); ++i)
        all += std::string("\xFF\xF1\x50\x40\x00\xFF\xFC", 7);
    return all;
}

/// RFC 7845 and RFC 6716, 3.1: packets of one byte, each 2.5 ms of silence, 255 a page.
std::string opus_of_one_byte(int packets) {
    const Made valid = made("a.opus", false);
    const std::size_t second = valid.bytes.find("OggS", 4), third = valid.bytes.find("OggS", second + 4);
    std::string all = valid.bytes.substr(0, third);
    const std::string serial = valid.bytes.substr(14, 4);
    for (int page = 0; page * 255 < packets; ++page)
        all += "OggS" + std::string(2, '\0') + little(static_cast<std::uint64_t>(page + 1) * 255 * 120, 8) +
               serial + little(static_cast<std::uint64_t>(page + 2), 4) + std::string(4, '\0') +
               std::string(1, '\xFF') + std::string(255, '\1') + std::string(255, '\xE0');
    return all;
}

std::string samples_of_two_bytes() {
    // One size for all samples, so that a small table claims as many as there are bytes.
    Made movie = made("a.mov", false, "-c:a pcm_s16le -ar 8000");
    const auto count = static_cast<std::uint64_t>(many());
    for (const Box& box : boxes_of(movie.bytes)) {
        const auto put = [&](std::size_t field, std::uint64_t value) {
            movie.bytes.replace(box.at + field, 4, big(value, 4));
        };
        if (box.kind == "stsz") put(16, count);
        if (box.kind == "stts") put(16, count);
        if (box.kind == "stsc") put(20, count);
        if (box.kind == "stco") put(16, movie.bytes.size());
    }
    return movie.bytes + std::string(2 * static_cast<std::size_t>(many()), '\x11');
}

} // namespace

TEST_CASE("sound in a million packets of a sample or none is taken or refused in bounded time and memory") {
    Trials trials("Sound in millions of tiny packets",
                  std::to_string(many()) +
                      " blocks of one sample or none in Matroska, "
                      "samples in MOV, headers without sound in AAC; as many packets of one byte in Opus");
    trials.give("a.mkv", "Matroska, one sample a block", one_sample_a_block());
    trials.give("empty.mkv", "Matroska, no sample in any block", empty_blocks());
    trials.give("a.aac", "AAC, frames without sound", empty_adts());
    trials.give("a.opus", "Opus, a byte a packet", opus_of_one_byte(runs(5'000, 200'000)));
    trials.give("a.mov", "MOV, one sample a packet", samples_of_two_bytes());
    WARN(trials.figures());
}
