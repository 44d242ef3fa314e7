// Movie files cut off at every box, and with absurd sizes and counts in every box.
#include "boxes.h"
#include "made.h"
#include "pack.h"
#include "tools/programs.h"
#include "trial.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>

using namespace luft::test;

namespace {

std::vector<Made> movies() {
    return {made("a.mp4", true, "-c:v mpeg4 -c:a aac -movflags faststart -metadata title=Mill"),
            made("a.mov", true, "-c:v mjpeg -c:a pcm_s16le"), made("a.m4a", false, "-c:a alac"),
            made("a.frag.mp4", true, "-c:v libx264 -bf 2 -c:a aac -movflags frag_keyframe+empty_moov")};
}

std::string at_box(const Box& box) {
    return " box '" + box.kind + "' at " + std::to_string(box.at);
}

std::vector<Case> cut_off(const Made& file) {
    std::vector<Case> cases;
    for (const Box& box : boxes_of(file.bytes))
        for (const std::size_t at : {box.at, box.at + 4, box.at + 8, box.at + box.size - 1})
            if (at > 0 && at < file.bytes.size())
                cases.push_back({file.name + ": cut off at " + std::to_string(at) + "," + at_box(box),
                                 [&file, at] { return file.bytes.substr(0, at); }});
    return cases;
}

/// The box's size as 32 bits, or as 64 bits, which take the place of its first bytes.
std::vector<Case> sizes(const Made& file) {
    std::vector<Case> cases;
    for (const Box& box : boxes_of(file.bytes)) {
        for (const std::uint64_t size :
             {std::uint64_t{0}, std::uint64_t{2}, std::uint64_t{7}, std::uint64_t{8},
              std::uint64_t{box.size - 1}, std::uint64_t{box.size + 1}, std::uint64_t{file.bytes.size() + 1},
              std::uint64_t{0x7FFFFFFF}, std::uint64_t{0xFFFFFFFF}})
            cases.push_back(
                {file.name + ": size " + std::to_string(size) + " in" + at_box(box),
                 [&file, box, size] { return std::string(file.bytes).replace(box.at, 4, big(size, 4)); }});
        if (box.size < 16) continue;
        for (const std::uint64_t size : {std::uint64_t{0}, std::uint64_t{15}, std::uint64_t{1} << 63,
                                         (std::uint64_t{1} << 63) - 1, ~std::uint64_t{0}})
            cases.push_back({file.name + ": 64-bit size " + std::to_string(size) + " in" + at_box(box),
                             [&file, box, size] {
                                 std::string bytes = file.bytes;
                                 bytes.replace(box.at, 4, big(1, 4));
                                 return bytes.replace(box.at + 8, 8, big(size, 8));
                             }});
    }
    return cases;
}

/// The tables of samples (ISO/IEC 14496-12, 8.6 and 8.7): how many entries, and what the first ones say.
std::vector<Case> counts(const Made& file) {
    constexpr std::array kTables{"stts", "stsc", "stsz", "stco", "ctts",
                                 "stss", "stsd", "elst", "dref", "trun"};
    std::vector<Case> cases;
    for (const Box& box : boxes_of(file.bytes)) {
        if (std::find(kTables.begin(), kTables.end(), box.kind) == kTables.end()) continue;
        for (std::size_t field = 12; field + 4 <= std::min<std::size_t>(box.size, 32); field += 4)
            for (const std::uint64_t value :
                 {0ULL, 1ULL, 1'000'000ULL, 80'000'000ULL, 0x7FFFFFFFULL, 0x80000000ULL, 0xFFFFFFFFULL})
                cases.push_back({file.name + ": " + std::to_string(value) + " in byte " +
                                     std::to_string(field) + " of" + at_box(box),
                                 [&file, box, field, value] {
                                     return std::string(file.bytes).replace(box.at + field, 4, big(value, 4));
                                 }});
    }
    return cases;
}

std::string box(const std::string& kind, const std::string& inside) {
    return big(inside.size() + 8, 4) + kind + inside;
}

/// A table of contents of zeros, compressed as QuickTime allowed (File Format, 2001: 'cmov').
std::string packed_header(std::uint64_t size, std::uint64_t claimed = 0) {
    const std::string packed =
        run("python3 -c 'import sys, zlib; c = zlib.compressobj(9); w = sys.stdout.buffer.write\nfor i in "
            "range(" +
            std::to_string(size / 1000) + "): w(c.compress(bytes(1000)))\nw(c.flush())'");
    return box("moov",
               box("cmov", box("dcom", "zlib") + box("cmvd", big(claimed > 0 ? claimed : size, 4) + packed)));
}

std::string nested(const std::string& kind, int depth) {
    std::string all;
    for (int i = 0; i < depth; ++i)
        all = box(kind, all);
    return all;
}

} // namespace

TEST_CASE("a movie file that is cut off at any box is refused or taken in bounded time and memory") {
    Trials trials(
        "Movie file cut off in the middle of its table of contents",
        "MP4, MOV, M4A and fragmented MP4, cut at the start of every box, within its header and before "
        "its last byte");
    for (const Made& file : movies())
        trials.give_some(file.name, cut_off(file), 2);
    WARN(trials.figures());
}

TEST_CASE(
    "absurd sizes and counts in any box of a movie file are refused or taken in bounded time and memory") {
    Trials trials(
        "Movie file whose table of contents lies",
        "every box with sizes from 0 to 2^64 - 1, every table with up to 2^32 - 1 entries, boxes nested "
        "100,000 deep, a compressed header of 180 MB and one that claims 4 GB");
    for (const Made& file : movies()) {
        trials.give_some(file.name, sizes(file), 1);
        trials.give_some(file.name, counts(file), 1);
    }
    const Made movie = made("a.mov", true, "-c:v mjpeg -c:a pcm_s16le");
    for (const char* kind : {"trak", "moov", "udta", "meta", "ilst"}) {
        if (!long_runs() && kind != std::string("trak")) continue;
        trials.give("nested.mov", std::string("nested ") + kind,
                    box("ftyp", "qt  ") + box("moov", nested(kind, long_runs() ? 100'000 : 20'000)) +
                        movie.bytes);
    }
    trials.give("packed.mov", "compressed header of 180 MB",
                box("ftyp", "qt  ") + packed_header(180'000'000) + movie.bytes);
    trials.give("packed.mov", "compressed header that claims 4 GB",
                box("ftyp", "qt  ") + packed_header(1000, 0xFFFFFFFF) + movie.bytes);
    WARN(trials.figures());
}
