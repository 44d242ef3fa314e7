// The text of a piece, taken apart into what is sung.
#include "project/sung_lines.h"

#include <catch2/catch.hpp>

using namespace luft::project;

namespace {

/// "wa-" for one that joins; lines end with "/".
std::string shown(const std::vector<SungLine>& lines) {
    std::string text;
    for (const SungLine& line : lines) {
        for (const Syllable& s : line)
            text += s.text + (s.joins ? "- " : " ");
        text += "/";
    }
    return text;
}

/// By the word alone, and in an English text.
int asked(const std::string& word) {
    return sung_lines(word).front().front().notes;
}
int asked_in_english(const std::string& word) {
    return sung_lines(word + " and").front().front().notes;
}

} // namespace

TEST_CASE("a line of text is a sung line; blank ones are left out, words are divided at typed hyphens only") {
    CHECK(shown(sung_lines("O-ver water boats\n\n  come home, \r\n")) == "O- ver water boats /come home, /");
    CHECK(shown(sung_lines("wa- ter -- and - foam\n-\n  \n...")) == "wa- ter and foam /");
    CHECK(shown(sung_lines("way-\nout")) == "way /out /"); // no word goes on over the end of a line
    CHECK(shown(sung_lines("»Où-vrir!«")) == "»Où- vrir!« /");
    CHECK(sung_lines("").empty());
    CHECK(sung_lines(" \n \n").empty());
}

TEST_CASE("a word asks for as many notes as it has runs of vowels, a syllable of a divided one for one") {
    CHECK(asked("water") == 2);
    CHECK(asked("moon") == 1);
    CHECK(asked("lying") == 2);
    CHECK(asked("young") == 1);
    CHECK(asked("Übermut") == 3);
    CHECK(asked("вода") == 2);
    CHECK(asked("水") == 1);
    const auto divided = sung_lines("eve-ning").front();
    CHECK(divided[0].notes == 1);
    CHECK(divided[1].notes == 1);
    CHECK_FALSE(divided[0].ends_line);
    CHECK(divided[1].ends_line);
}

TEST_CASE("an e at a word's end is mute in English, and sung elsewhere") {
    CHECK(asked("Rose") == 2);
    CHECK(asked("alles") == 2);
    for (const char* word : {"home,", "ropes", "turned", "come"}) {
        CHECK(asked(word) == 2);
        CHECK(asked_in_english(word) == 1);
    }
    CHECK(asked_in_english("the") == 1); // not where it is the only vowel
    CHECK(asked_in_english("above") == 2);
    CHECK(asked_in_english("candle") == 1); // known to be wrong: the l is sung
    CHECK(asked_in_english("agree") == 2);
}

TEST_CASE("text that isn't well-formed is read without harm") {
    for (const char* text : {"\xC3", "a\xF0", "\xFF\xFE-\xE2\x82", "e-\x80\x80"})
        CHECK(sung_lines(text).size() <= 1);
}
