// Times as they are typed.
#include "cli/typed.h"

#include <catch2/catch.hpp>

using luft::Seconds;
using luft::cli::parse_time;

TEST_CASE("Times are read as seconds, minutes and hours") {
    CHECK(parse_time("0") == Seconds(0));
    CHECK(parse_time("62.5") == Seconds(62.5));
    CHECK(parse_time("1:02.5") == Seconds(62.5));
    CHECK(parse_time("1:2") == Seconds(62));
    CHECK(parse_time("90:00") == Seconds(5400));
    CHECK(parse_time("1:01:02.25") == Seconds(3662.25));
    CHECK(parse_time(".5") == Seconds(0.5));
}

TEST_CASE("What isn't a time is refused") {
    for (const char* text : {"", ".", ":", "1:", ":5", "-1", "+1", "1e3", "1,5", "1:60", "1:2:60", "1:2:3:4",
                             "1.5:2", "5 s", "nan", "inf", "0x10", "1234567890123"}) {
        INFO(text);
        CHECK_THROWS_AS(parse_time(text), luft::cli::UsageError);
    }
}
