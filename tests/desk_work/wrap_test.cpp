#include "desk/work/wrap.h"

#include <catch2/catch.hpp>

using namespace luft::desk;
using Lines = std::vector<std::string>;

namespace {

/// Every character is one wide.
int width(const std::string& text) {
    return static_cast<int>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

} // namespace

TEST_CASE("Words are laid on lines no wider than asked, and line ends stay") {
    CHECK(wrapped("one two three four", 9, width) == Lines{"one two", "three", "four"});
    CHECK(wrapped("  one \t two\r\n\nthree ", 20, width) == Lines{"one two", "", "three"});
    CHECK(wrapped("", 9, width) == Lines{""});
}

TEST_CASE("A word wider than a line is broken between characters, never inside one") {
    CHECK(wrapped("a äöüäöüä b", 3, width) == Lines{"a", "äöü", "äöü", "ä b"});
    CHECK(wrapped("wide", 0, width) == Lines{"w", "i", "d", "e"});
}

TEST_CASE("The largest size that fits is found, and the least when none does") {
    CHECK(largest(40, 96, [](int size) { return size <= 71; }) == 71);
    CHECK(largest(40, 96, [](int) { return true; }) == 96);
    CHECK(largest(40, 96, [](int) { return false; }) == 40);
}

TEST_CASE("The spoken line goes on in proportion to the characters") {
    const Lines lines{"123456789", "1234", "1234"}; // with line ends 10, 5 and 5
    CHECK(spoken_line(lines, 0) == 0);
    CHECK(spoken_line(lines, 0.49) == 0);
    CHECK(spoken_line(lines, 0.51) == 1);
    CHECK(spoken_line(lines, 0.74) == 1);
    CHECK(spoken_line(lines, 0.76) == 2);
    CHECK(spoken_line(lines, 7) == 2);
    CHECK(spoken_line({}, 0.5) == 0);
}
