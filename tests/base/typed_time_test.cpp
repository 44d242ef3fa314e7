#include "base/text.h"
#include "base/typed_time.h"

#include <catch2/catch.hpp>

using luft::Seconds;
using luft::Span;
using luft::typed_span;
using luft::typed_time;

TEST_CASE("a time as it is shown is read back as the same time") {
    for (const double t : {0.0, 9.9, 62.5, 3599.9, 3662.3}) {
        INFO(t);
        const auto read = typed_time(luft::clock_text(Seconds(t)));
        REQUIRE(read);
        CHECK(read->value() == Approx(t));
    }
}

TEST_CASE("seconds alone are a time, and what isn't a time is none") {
    CHECK(typed_time("62.5") == Seconds(62.5));
    for (const char* text : {"", ":", "1:", "-1", "1:60", "1:2:3:4", "1.5:2", "5 s"}) {
        INFO(text);
        CHECK_FALSE(typed_time(text));
    }
}

TEST_CASE("two times with a line between are a span, also with the end first; anything else is none") {
    CHECK(typed_span("0:41-0:44.5") == Span{Seconds(41), Seconds(44.5)});
    CHECK(typed_span("3-1") == Span{Seconds(3), Seconds(1)});
    for (const char* text : {"", "-", "1-", "-1", "1", "1-2-3", "1 - 2"}) {
        INFO(text);
        CHECK_FALSE(typed_span(text));
    }
}
