#include "base/error.h"
#include "desk/work/sung_words.h"
#include "desk_work/desk.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;

namespace {

/// As in the desk: the words typed under 'About this piece'.
void type(Session& session, const std::string& words) {
    project::Piece piece = session.source().piece;
    piece.words = words;
    set_piece(session, piece);
}

std::vector<double> times(const Session& session) {
    std::vector<double> all;
    for (const auto& word : session.source().sung_words)
        all.push_back(word.at.value());
    return all;
}

using Times = std::vector<double>;

constexpr const char* kWords = "low moon a-bove\nlong bay was there";

} // namespace

TEST_CASE("Words that are typed stand under the notes at once, and undo takes them away again") {
    Desk desk;
    int told = 0;
    desk.session.watch([&](const Session::Change& change) { told += change.contents; });
    type(desk.session, kWords);
    CHECK(told == 2);
    CHECK(times(desk.session) == Times{0.5, 1, 1.5, 2, 3, 3.5, 4, 4.5});
    CHECK(desk.session.source().sung_words[2].joins);
    desk.session.undo();
    CHECK(desk.session.source().sung_words.empty());
    CHECK(desk.session.source().piece.words == kWords);
    spread_words(desk.session); // by the command
    CHECK(desk.session.source().sung_words.size() == 8);
}

TEST_CASE("What is written about the piece beside its words doesn't touch those under the line") {
    Desk desk;
    type(desk.session, kWords);
    const auto entries = desk.session.project().journal().size();
    project::Piece piece = desk.session.source().piece;
    piece.metre = "6/8";
    set_piece(desk.session, piece);
    CHECK(desk.session.project().journal().size() == entries + 1);
    CHECK(desk.session.source().sung_words.size() == 8);
}

TEST_CASE("A dragged word stays where it was put, and those around it follow") {
    Desk desk;
    type(desk.session, kWords);
    const auto bay = desk.session.source().sung_words[5].id;
    move_word(desk.session, bay, Seconds(4));
    CHECK(times(desk.session) == Times{0.5, 1, 1.5, 2, 3, 4, 4.225, 4.5});
    CHECK(desk.session.source().sung_words[5].placed);
    spread_words(desk.session);
    CHECK(times(desk.session)[5] == 4);
    CHECK(desk.session.undo_label() == "move the word 'bay' to 0:04.0"); // spreading changed nothing
    desk.session.undo();
    CHECK(times(desk.session)[5] == 3.5);
}

TEST_CASE("A word can't be dragged past one that the coach has placed, nor out of the recording") {
    Desk desk;
    type(desk.session, kWords);
    const auto& words = desk.session.source().sung_words;
    const auto moon = words[1].id, bay = words[5].id;
    CHECK(room_of_word(desk.session.source(), moon) == Span{Seconds(0), Seconds(6)});
    move_word(desk.session, bay, Seconds(3.5));
    CHECK(room_of_word(desk.session.source(), moon) == Span{Seconds(0), Seconds(3.5)});
    move_word(desk.session, moon, Seconds(5));
    CHECK(times(desk.session)[1] == 3.5);
    move_word(desk.session, bay, Seconds(99));
    CHECK(times(desk.session)[5] == 6);
    CHECK(room_of_word(desk.session.source(), {99}) == Span{});
    CHECK_THROWS_AS(move_word(desk.session, {99}, Seconds(1)), Error);
}

TEST_CASE("Without words, or without notes, spreading says why it can't") {
    Desk desk;
    CHECK_THROWS_WITH(spread_words(desk.session), Catch::Contains("no words"));
    Session empty;
    CHECK_THROWS_WITH(spread_words(empty), Catch::Contains("no notes"));
    desk.make_read_only();
    desk.session.open(desk.file());
    REQUIRE(desk.session.read_only());
    CHECK_THROWS_AS(type(desk.session, kWords), Error);
}
