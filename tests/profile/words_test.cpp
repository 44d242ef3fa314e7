#include "profile/words.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::profile;

TEST_CASE("Lists, counts and shares read as a person says them") {
    CHECK(listed({}).empty());
    CHECK(listed({"a"}) == "a");
    CHECK(listed({"a", "b", "c"}) == "a, b and c");
    CHECK(counted(1, "breath") == "1 breath");
    CHECK(counted(0, "switch", "switches") == "0 switches");
    CHECK(percent(0.625) == "63 %");
    CHECK(percent(0.001) == "under 1 %");
    CHECK(percent(0.999) == "over 99 %");
    CHECK(percent(1) == "100 %");
}

TEST_CASE("Times and pitches read as a person says them") {
    CHECK(length_text(Seconds(4.21)) == "4.2 s");
    CHECK(length_text(Seconds(59.97)) == "1 min");
    CHECK(length_text(Seconds(83)) == "1 min 23 s");
    CHECK(off_pitch(Cents(-12.4)) == "12 cents flat");
    CHECK(off_pitch(Cents(1)) == "1 cent sharp");
    CHECK(off_pitch(Cents(-0.3)) == "dead on pitch");
    const auto at = [](double s) { return Span{Seconds(s), Seconds(s + 1)}; };
    CHECK(times({at(1), at(62.5)}) == "0:01.0 and 1:02.5");
    CHECK(times({at(1), at(2), at(3)}, 1) == "0:01.0 and 2 more");
}
