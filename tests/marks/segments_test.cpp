// Runs and the line of pitch through them.
#include "marks/segments.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace luft;
using namespace luft::marks;

TEST_CASE("a run whose tail was cut off inside a hole of its pitch is cut into notes all the same") {
    // Found by warping: the ear threw on such a recording.
    voice::Hearing hearing;
    hearing.setting = voice::Setting::accompanied; // no consonants are looked for
    for (int i = 0; i < 60; ++i)
        hearing.curves.f0.push(i < 57 ? std::optional(Hertz(i < 30 ? 220 : 277)) : std::nullopt);
    const std::vector<Run> runs{{0, 59}};
    const auto line = pitch_line(hearing, runs);
    CHECK(std::none_of(line.begin(), line.begin() + 59, [](float p) { return std::isnan(p); }));
    CHECK(line[58] == line[56]);
    const auto notes = cut_notes(hearing, runs, line);
    REQUIRE(notes.size() == 2);
    CHECK(notes[0].end == 30);
    CHECK(notes[1].end == 59);
}
