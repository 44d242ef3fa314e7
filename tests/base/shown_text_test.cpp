// What a hostile text may not do once it is shown.
#include "base/shown_text.h"

#include <catch2/catch.hpp>

#include <string>

using namespace luft;

TEST_CASE("a text that is shown keeps its letters and loses what a terminal would obey") {
    CHECK(shown("Breathe, שלום é 𝄞\tdeep\r\nnow") == "Breathe, שלום é 𝄞\tdeep\r\nnow");
    CHECK(shown("\x1B[31mred\x07\x7F") == "[31mred");
    CHECK(shown("a\xC2\x9B"
                "31mb") == "a31mb");
    CHECK(shown("one\xC2\x85two\xE2\x80\xA8three\xE2\x80\xA9") == "one\ntwo\nthree\n");
}

TEST_CASE("what is no character is shown as one that stands for it") {
    CHECK(shown("\xEF\xBF\xBEx\xEF\xBF\xBF") == "\xEF\xBF\xBDx\xEF\xBF\xBD");
    CHECK(shown("\xEF\xB7\x90\xF0\x9F\xBF\xBE") == "\xEF\xBF\xBD\xEF\xBF\xBD"); // U+FDD0, U+1FFFE
    CHECK(shown("\xED\xA0\x80") == "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");     // half a surrogate pair
}

TEST_CASE("every line closes the directions that it opens") {
    // RIGHT-TO-LEFT OVERRIDE, POP DIRECTIONAL FORMATTING; FIRST STRONG ISOLATE, POP DIRECTIONAL ISOLATE
    const std::string rlo = "\xE2\x80\xAE", pdf = "\xE2\x80\xAC", fsi = "\xE2\x81\xA8", pdi = "\xE2\x81\xA9";
    CHECK(with_directions_closed("a" + rlo + "b") == "a" + rlo + "b" + pdf);
    CHECK(with_directions_closed("a" + rlo + "b" + pdf + "c") == "a" + rlo + "b" + pdf + "c");
    CHECK(with_directions_closed("a" + fsi + rlo + "b") == "a" + fsi + rlo + "b" + pdf + pdi);
    CHECK(with_directions_closed("a" + fsi + rlo + "b" + pdi + "c") ==
          "a" + fsi + rlo + "b" + pdf + pdi + "c");
    CHECK(with_directions_closed("a" + pdf + pdi + "b") == "ab");
    CHECK(with_directions_closed(fsi + pdf + "b") == fsi + "b" + pdi);
    CHECK(shown("a" + rlo + "b\nc") == "a" + rlo + "b" + pdf + "\nc");
}

TEST_CASE("JSON for a terminal is the same JSON") {
    CHECK(shown_json("{\"a\": \"x\xC2\x9Bm\x7F é\xE2\x80\xA8”\"}") ==
          "{\"a\": \"x\\u009bm\\u007f é\\u2028”\"}");
}
