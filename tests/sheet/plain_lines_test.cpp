// Lines told from the widths of words: right or not at all.
#include "sheet/canvas.h"
#include "sheet/heights.h"
#include "sheet/plain_lines.h"

#include <catch2/catch.hpp>

#include <random>
#include <string>
#include <vector>

using luft::sheet::Canvas;
using luft::sheet::Heights;
using luft::sheet::plain_lines;
using luft::sheet::Type;

namespace {

/// As if every letter and every space were ten wide.
std::optional<int> lines(std::string_view text, double width) {
    return plain_lines(text, width, 10, [](std::string_view word) { return 10.0 * double(word.size()); });
}

std::string some_text(std::mt19937& random) {
    static const std::vector<std::string> kWords = {
        "the", "air",  "goes",      "out",    "early.", "Listen:", "AV",   "To",    "line",
        "12",  "1875", "breathing", "vowel,", "fi",     "Wave",    "ffi!", "yes?",  "a",
        "I",   "soft", "so",        "quiet;", "onset",  "LT",      "Va.",  "rung,", "held"};
    std::string text;
    for (auto left = 1 + random() % 40; left > 0; --left)
        text += (text.empty() ? "" : " ") + kWords[random() % kWords.size()];
    return text;
}

} // namespace

TEST_CASE("a line ends at the last space that lets it fit") {
    CHECK(lines("one two three", 200) == 1);
    CHECK(lines("one two three", 95) == 2);
    CHECK(lines("one two three", 55) == 3);
}

TEST_CASE("no lines are told of a text that more than spaces may break, or that isn't plain") {
    for (const std::string text :
         {"", " one", "one ", "one  two", "one-two", "one/two", "a\tb", "a\nb", "(one)", "\"one\"",
          "don\xe2\x80\x99t", "fa\xc3\xa7on", "one !", "e\xcc\x81"})
        CHECK_FALSE(lines(text, 1000));
    CHECK_FALSE(lines(std::string(41, 'x'), 1000));
}

TEST_CASE("no lines are told where a word is wider than the paragraph, or ends within a hair of its edge") {
    CHECK_FALSE(lines("one two three", 45));
    CHECK_FALSE(lines("one two three", 70.4));
    CHECK_FALSE(lines("one two three", 49.8));
}

TEST_CASE("heights are those of set paragraphs, for plain texts and others") {
    const Canvas canvas = Canvas::picture(1, 1);
    Heights heights(canvas);
    std::mt19937 random(Catch::rngSeed());
    int told = 0;
    for (int i = 0; i < 2000; ++i) {
        std::string text = some_text(random);
        if (i % 20 == 0) text += " na\xc3\xafve";
        const double width = 60 + double(random() % 400);
        const Type type{
            .size = 9 + double(random() % 5), .bold = random() % 4 == 0, .italic = random() % 4 == 0};
        const int most = static_cast<int>(random() % 4) * 3;
        INFO(text << " in " << width << " at " << type.size);
        REQUIRE(heights.of(width, text, type, most) ==
                Approx(canvas.paragraph_height(width, text, type, most)).margin(1e-6));
        told += plain_lines(text, width, canvas.extent("x x", type).width - canvas.extent("xx", type).width,
                            [&](std::string_view word) { return canvas.extent(word, type).width; })
                    .has_value();
    }
    CHECK(told > 500); // else this would have compared Pango with itself
}
