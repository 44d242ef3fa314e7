// The words under the line in the project file.
#include "compare.h"
#include "project/spread_words.h"

using namespace desk;

namespace {

SungWord word(const std::string& text, double at, bool joins = false, bool placed = false) {
    return {{}, {}, text, joins, Seconds(at), placed};
}

} // namespace

TEST_CASE("words under the line come back as they were set, also after closing") {
    Sample s;
    CHECK(s.project.sung_words(s.a).empty());
    s.project.set_sung_words(s.a, {word("O", 0.1, true), word("ver", 0.5, false, true), word("moon;", 1.6)});
    s.reopen(Access::read);
    const auto words = s.project.sung_words(s.a);
    REQUIRE(words.size() == 3);
    CHECK(words[0].text == "O");
    CHECK(words[0].joins);
    CHECK(words[1].at == Seconds(0.5));
    CHECK(words[1].placed);
    CHECK(words[2].performance == s.a);
    CHECK(s.project.check().empty());
}

TEST_CASE("setting the words again keeps the rows of those that are known") {
    Sample s;
    s.project.set_sung_words(s.a, {word("low", 0.1), word("moon", 0.5)});
    auto words = s.project.sung_words(s.a);
    const auto moon = words[1].id;
    words.erase(words.begin());
    words.push_back(word("bay", 0.9));
    s.project.set_sung_words(s.a, words);
    const auto now = s.project.sung_words(s.a);
    REQUIRE(now.size() == 2);
    CHECK(now[0].id == moon);
    CHECK(now[1].text == "bay");
    const auto entries = s.project.journal().size();
    s.project.set_sung_words(s.a, now); // says the same: no edit
    CHECK(s.project.journal().size() == entries);
}

TEST_CASE("words that can't stand there are refused, and nothing changes") {
    Sample s;
    s.project.set_sung_words(s.a, {word("low", 0.1)});
    const std::string before = contents(s.file);
    for (const auto& bad :
         {std::vector{word("", 1)}, std::vector{word("two words", 1)}, std::vector{word("low", -1)},
          std::vector{word("low", NAN)}, std::vector{word("low", 2), word("moon", 1)}})
        CHECK(fault_of([&] { s.project.set_sung_words(s.a, bad); }) == Fault::bad_request);
    CHECK(fault_of([&] { s.project.set_sung_words({99}, {}); }) == Fault::not_found);
    CHECK(fault_of([&] { (void)s.project.sung_words({99}); }) == Fault::not_found);
    CHECK(fault_of([&] { s.project.move_sung_word({99}, Seconds(1)); }) == Fault::not_found);
    CHECK(fault_of([&] { s.project.move_sung_word({1}, Seconds(-1)); }) == Fault::bad_request);
    CHECK((contents(s.file) == before));
}

TEST_CASE("a moved word is the coach's; those the program has put are spread around it in the same edit") {
    Sample s;
    marks::Analysis heard = analysis();
    heard.notes = {note(0.1, 0.4), note(0.4, 0.7), note(0.7, 0.9), note(1.6, 2.0), note(2.0, 2.8)};
    s.project.store_listening(s.a, heard);
    s.project.set_piece({"Song", "", "", "", "low moon\nbay"});
    CHECK(spread_sung_words(s.project, s.a) == 3);
    auto words = s.project.sung_words(s.a);
    REQUIRE(words.size() == 3);
    CHECK(words[0].at == Seconds(0.1));
    const auto entries = s.project.journal().size();
    s.project.move_sung_word(words[0].id, Seconds(0.4));
    CHECK(s.project.journal().size() == entries + 1);
    CHECK(s.project.journal(1).front().label == "move the word 'low' to 0:00.4");
    words = s.project.sung_words(s.a);
    CHECK(words[0].placed);
    CHECK(words[0].at == Seconds(0.4));
    CHECK(words[1].at == Seconds(0.7));
    CHECK_FALSE(words[1].placed);
    CHECK(words[2].at == Seconds(1.6));
    CHECK(spread_sung_words(s.project, s.a) == 3);
    CHECK(s.project.sung_words(s.a) == words); // spreading again leaves it there
    CHECK(fault_of([&] { s.project.move_sung_word(words[1].id, Seconds(0.2)); }) == Fault::bad_request);
    s.project.undo();
    CHECK(s.project.sung_words(s.a)[0].at == Seconds(0.1));
}

TEST_CASE("words that aren't the piece's own are moved alone; those they would pass go along") {
    Sample s;
    s.project.store_listening(s.a, analysis());
    s.project.set_sung_words(s.a, {word("la", 0.1), word("lo", 0.5), word("lu", 1.7)});
    s.project.move_sung_word(s.project.sung_words(s.a)[0].id, Seconds(0.8));
    const auto words = s.project.sung_words(s.a);
    CHECK(words[0].at == Seconds(0.8));
    CHECK(words[1].at == Seconds(0.8));
    CHECK(words[2].at == Seconds(1.7));
}

TEST_CASE("a piece without words, or a performance without notes, leaves what stands there alone") {
    Sample s;
    s.project.set_sung_words(s.a, {word("la", 0.1)});
    CHECK(spread_sung_words(s.project, s.a) == 1); // no notes
    CHECK(s.project.sung_words(s.a).size() == 1);
    s.project.store_listening(s.a, analysis());
    CHECK(spread_sung_words(s.project, s.a) == 4); // "One line / and another"
    s.project.set_piece({"Song", "", "", "", ""});
    CHECK(spread_sung_words(s.project, s.a) == 0); // the words were taken out
}

TEST_CASE("words go with their performance, and come back with it") {
    Sample s;
    s.project.set_sung_words(s.a, {word("low", 0.1)});
    s.project.remove_performance(s.a);
    CHECK(s.project.check().empty());
    s.project.undo();
    CHECK(s.project.sung_words(s.a).size() == 1);
}

TEST_CASE("check reports sung words that can't be") {
    for (const char* harm :
         {"UPDATE sung_word SET at_s = -1 WHERE ordinal = 1", "UPDATE sung_word SET joins = 7",
          "UPDATE sung_word SET text = ''", "UPDATE sung_word SET at_s = 9 WHERE ordinal = 1",
          "UPDATE sung_word SET performance = 99"}) {
        Sample s;
        s.project.set_sung_words(s.a, {word("low", 0.1), word("moon", 0.5)});
        CHECK(s.project.check().empty());
        execute(s.file,
                std::string("PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF; ") + harm);
        INFO(harm);
        CHECK_FALSE(Project::open(s.file, Access::read).check().empty());
    }
}
