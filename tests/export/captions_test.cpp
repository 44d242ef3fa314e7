// Captions that one can read: two short lines, no faster than a reader.
#include "base/text.h"
#include "export/captions.h"
#include "export/cue_material.h"

#include <catch2/catch.hpp>

#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

std::vector<std::string> words_of(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> words;
    for (std::string w; in >> w;)
        words.push_back(w);
    return words;
}

std::vector<std::string> words_of(const std::vector<std::vector<std::string>>& captions) {
    std::vector<std::string> words;
    for (const auto& lines : captions)
        for (const auto& line : lines)
            for (auto& w : words_of(line))
                words.push_back(w);
    return words;
}

} // namespace

TEST_CASE("captions have at most two lines of forty characters and keep every word in order") {
    const std::string text =
        "Here you can hear that a little air comes before the tone. It sounds as if the folds leave a gap, "
        "and air "
        "runs along with the tone. Sound alone only hints at that. If you want to work on this, try the "
        "drill "
        "“Light staccato”: it brings the folds together neatly, so that each note speaks at once. Listen!";
    const auto captions = caption_lines(text);
    for (const auto& lines : captions) {
        REQUIRE(!lines.empty());
        CHECK(lines.size() <= 2);
        for (const auto& line : lines)
            CHECK(line.size() <= 40 + 4); // the curly quotes take three bytes each
    }
    CHECK(words_of(captions) == words_of(text));
    CHECK(captions.size() <= 9); // 300 characters need at least 4; none flits by
}

TEST_CASE("captions and lines end with the sentence where they can") {
    using Lines = std::vector<std::string>;
    using All = std::vector<Lines>;
    CHECK(caption_lines("This is the first sentence of two. And here there is another sentence.") ==
          All{Lines{"This is the first sentence of two.", "And here there is another sentence."}});
    CHECK(caption_lines(
              "This is the first sentence of three. Here is one more. And here there is another sentence.") ==
          All{Lines{"This is the first sentence of three."},
              Lines{"Here is one more.", "And here there is another sentence."}});
}

TEST_CASE("words longer than a line are cut and nothing is lost") {
    std::string joined;
    const std::string word(95, 'x');
    const auto captions = caption_lines(word);
    for (const auto& lines : captions)
        for (const auto& line : lines) {
            CHECK(line.size() <= 40);
            joined += line;
        }
    CHECK(joined == word);
    CHECK(caption_lines("").empty());
    CHECK(caption_lines(" \n\t ").empty());
}

TEST_CASE("captions follow each other within their talk, and none is faster than 180 words a minute") {
    const auto sheet = script::lay_out(cue_source()); // talk at 150 words a minute
    const auto all = captions(sheet);
    REQUIRE(all.size() >= 6);
    Rational last;
    for (const Caption& c : all) {
        CHECK(c.start >= last);
        CHECK(c.end > c.start);
        last = c.end;
        int words = 0;
        for (const auto& line : c.lines)
            words += count_words(line);
        // 0.33 s a word is 180 words a minute (BBC guidance to subtitlers).
        CHECK((c.end - c.start).as_double() >= words / 3.0 - 1e-9);
    }
    CHECK(all.front().start == Rational(0));
    CHECK(all.back().end == sheet.running_time);
}

TEST_CASE("captions of a talk that is faster than one reads last into the music after it") {
    auto source = cue_source();
    source.items.resize(1);
    source.items[0].rehearsed = Seconds(4); // 28 words in 4 s
    const auto sheet = script::lay_out(source);
    const auto all = captions(sheet);
    CHECK(all.back().end.as_double() == Approx(count_words(source.items[0].text) / 3.0));
}
