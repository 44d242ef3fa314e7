// Places to break a line in words that have none.
#include "sheet/breakable.h"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using luft::sheet::beginning;
using luft::sheet::breakable;
using luft::sheet::pieces;
using luft::sheet::with_few_marks;

namespace {

const std::string kBreak = "\u200b";

std::string repeated(const std::string& one, int times) {
    std::string all;
    for (int i = 0; i < times; ++i)
        all += one;
    return all;
}

} // namespace

TEST_CASE("text with white space is left as it is") {
    const std::string text = repeated("a long evening by the water, sung twice\n", 50);
    CHECK(breakable(text) == text);
    CHECK(breakable(repeated("\u00e4", 200)) == repeated("\u00e4", 200));
}

TEST_CASE("a run of more than 200 characters gets a place to break after each 200") {
    CHECK(breakable(repeated("x", 201)) == repeated("x", 200) + kBreak + "x");
    CHECK(breakable("a " + repeated("\u00e4", 450)) == "a " + repeated("\u00e4", 200) + kBreak +
                                                           repeated("\u00e4", 200) + kBreak +
                                                           repeated("\u00e4", 50));
}

TEST_CASE("marks stay with their letters, and joined signs together") {
    const std::string marked = "e\u0301";
    CHECK(breakable(repeated("x", 199) + marked + "yz") == repeated("x", 199) + marked + kBreak + "yz");
    const std::string joined = "\U0001f468\u200d\U0001f469";
    CHECK(breakable(repeated("x", 199) + joined + "yz") == repeated("x", 199) + joined + kBreak + "yz");
}

TEST_CASE("a letter keeps no more than 200 marks") {
    CHECK(with_few_marks("e" + repeated("\u0301", 5000) + "x") == "e" + repeated("\u0301", 200) + "x");
    CHECK(with_few_marks(repeated("x", 5000)) == repeated("x", 5000));
    CHECK(breakable("e" + repeated("\u0301", 200) + "x") == "e" + repeated("\u0301", 200) + "x");
    CHECK(breakable("e" + repeated("\u0301", 5000) + "x") == "e" + repeated("\u0301", 200) + "x");
}

TEST_CASE("of a text that is shown in few lines only its beginning counts") {
    const std::string text = repeated("nine more ", 3000);
    CHECK(beginning("short\n", 1) == "short\n");
    CHECK(beginning(text, 1) == repeated("nine more ", 400));
    CHECK(beginning(text, 2) == repeated("nine more ", 800));
    CHECK(beginning(text, 100) == text);
    CHECK(beginning("", 3).empty());
}

TEST_CASE("what is no UTF-8 counts byte by byte") {
    CHECK(breakable(repeated("\xff", 201)) == repeated("\xff", 200) + kBreak + "\xff");
}

TEST_CASE("a text of up to 4,000 bytes is one piece, and so is none") {
    CHECK(pieces("") == std::vector<std::string>{""});
    CHECK(pieces("a\n\nb\n") == std::vector<std::string>{"a\n\nb\n"});
    CHECK(pieces(repeated("nine more ", 400)).size() == 1);
}

TEST_CASE("a long text is cut at the ends of lines, and empty lines stay") {
    const std::string verse = repeated("nine more ", 150) + "\n\n";
    std::string together;
    for (const std::string& piece : pieces(repeated(verse, 20)))
        together += piece + "\n";
    CHECK(together == repeated(verse, 20) + "\n");
}

TEST_CASE("a long paragraph is cut between words, and none is lost") {
    const std::string text = repeated("nine more ", 3000) + "!";
    std::string together;
    for (const std::string& piece : pieces(text)) {
        CHECK(piece.size() <= 4000);
        together += piece + " ";
    }
    CHECK(together == text + " ");
}

TEST_CASE("a long word is cut between letters, which keep their marks") {
    const std::string letter = "e\u0301"; // 3 bytes
    std::string together;
    for (const std::string& piece : pieces(repeated(letter, 5000))) {
        CHECK(piece.starts_with("e"));
        CHECK(piece.size() <= 4000);
        together += piece;
    }
    CHECK(together == repeated(letter, 5000));
    const std::string endless = "e" + repeated("\u0301", 5000);
    CHECK(pieces(endless + "next") == std::vector<std::string>{endless, "next"});
    CHECK(pieces(endless) == std::vector<std::string>{endless});
}
