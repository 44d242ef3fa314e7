// The words under the line: where they stand, what lies under the pointer, how they look.
#include "profile/demo_source.h"
#include "project/spread_words.h"
#include "sheet/draw.h"
#include "sheet/hit.h"
#include "sheet/measures.h"
#include "sheet/pages.h"
#include "sheet/word_places.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::sheet;

namespace {

constexpr const char* kWords =
    "Over wa-ter boats come home,\nevening in a coat of foam;\none long moon above "
    "the bay\nand the wind has gone away.\nAll the ropes are lying slow,";

profile::Source with_words(const std::string& words = kWords) {
    auto source = profile::demo::source(1);
    source.sung_words = project::spread_words(words, source.marks, {});
    return source;
}

project::SungWord word(const std::string& text, double at, bool joins = false) {
    return {{}, {}, text, joins, Seconds(at), false};
}

double lines(double, std::string_view, Type type, int most) {
    return type.size * 1.3 * std::max(1, most);
}

Layout laid_out(const profile::Source& source, double per_second = 90) {
    static Canvas measuring = Canvas::picture(1, 1);
    static WordWidths widths(measuring);
    View view{1000, 90, 7, 200};
    view.per_second = per_second;
    return {source, view, lines, [](std::string_view text) { return widths.of(text); }};
}

void expect_apart(const Layout& layout) {
    for (std::size_t i = 1; i < layout.words().size(); ++i) {
        const PlacedWord& a = layout.words()[i - 1];
        const PlacedWord& b = layout.words()[i];
        if (a.row != b.row) continue;
        INFO(a.word->text << " " << b.word->text);
        CHECK(a.left + a.width + (a.word->joins ? 0 : 4) < b.left);
        for (const double hyphen : a.hyphens) {
            CHECK(hyphen - 2 > a.left + a.width);
            CHECK(hyphen + 2 < b.left);
        }
        if (a.line_to > a.line_from) CHECK(a.line_to < b.left);
    }
}

} // namespace

TEST_CASE("A word stands where its note begins, on the row that shows that note") {
    const auto source = with_words();
    const Layout layout = laid_out(source, 140);
    REQUIRE(layout.words().size() == source.sung_words.size());
    int at_their_note = 0;
    for (std::size_t i = 0; i < layout.words().size(); ++i) {
        const PlacedWord& placed = layout.words()[i];
        CHECK(placed.word == &source.sung_words[i]);
        CHECK(placed.row == layout.row_of(placed.word->at));
        CHECK(placed.left + 0.01 >=
              std::min(layout.x_of(placed.row, placed.word->at), layout.right_edge() - 4 - placed.width));
        at_their_note += std::abs(placed.left - layout.x_of(placed.row, placed.word->at)) < 0.01;
    }
    CHECK(at_their_note > static_cast<int>(layout.words().size()) * 3 / 4);
}

TEST_CASE("No word lies on another at any scale, nor do hyphens and lines") {
    const auto source = with_words();
    for (const double scale : {30, 50, 90, 160, 400})
        expect_apart(laid_out(source, scale));
    auto crowded = source;
    for (auto& one : crowded.sung_words)
        one.at = Seconds(std::floor(one.at.value() / 3) * 3);
    expect_apart(laid_out(crowded));
}

TEST_CASE("A word that is pushed far is set smaller, and a hyphen without room is left out") {
    auto source = profile::demo::source(1);
    const double at = source.marks.front().span().start.value();
    source.sung_words = {word("wa", at, true), word("ter", at + 0.02), word("wayward", at + 0.02),
                         word("I", at + 0.02)};
    const Layout layout = laid_out(source);
    CHECK(layout.words()[0].hyphens.empty());
    CHECK(layout.words()[1].left - layout.words()[0].left < layout.words()[0].width + 3);
    CHECK(layout.words()[2].size == kSungWord.size);
    CHECK(layout.words()[3].size < kSungWord.size);
}

TEST_CASE("Syllables of one word have hyphens between them, several where they are far apart") {
    auto source = profile::demo::source(1);
    const double at = source.marks.front().span().start.value();
    source.sung_words = {word("wa", at, true), word("ter", at + 0.5), word("a", at + 1, true),
                         word("bove", at + 3)};
    const Layout layout = laid_out(source, 100);
    CHECK(layout.words()[0].hyphens.size() == 1);
    CHECK(layout.words()[2].hyphens.size() == 2);
    CHECK(layout.words()[1].hyphens.empty());
    CHECK(layout.words()[3].hyphens.empty());
}

TEST_CASE("A word held over several notes has a line to the end of the last one") {
    auto source = profile::demo::source(1);
    const Layout bare = laid_out(source, 100);
    const auto row = std::ranges::find_if(bare.rows(), [](const Row& r) { return r.notes.size() > 3; });
    REQUIRE(row != bare.rows().end());
    const auto start = [&](std::size_t i) { return row->notes[i]->span().start.value(); };
    source.sung_words = {word("oh", start(0)), word("low", start(2)), word("moon", start(3))};
    const Layout layout = laid_out(source, 100);
    const auto& oh = layout.words()[0];
    CHECK(oh.line_to > oh.line_from);
    CHECK(oh.line_to <= layout.x_of(oh.row, row->notes[1]->span().end) + 0.01);
    CHECK(layout.words()[1].line_to == layout.words()[1].line_from);
    source.sung_words.front().text = "over"; // asks for two notes
    CHECK(laid_out(source, 100).words()[0].line_to == 0);
    const auto& last = layout.words()[2];
    CHECK(last.line_to == Approx(layout.x_of(last.row, row->notes.back()->span().end)));
}

TEST_CASE("A row grows by a line only where there are words") {
    const auto plain = profile::demo::source(1);
    auto source = plain;
    source.sung_words = {word("oh", source.marks.front().span().start.value())};
    const Layout without = laid_out(plain), with = laid_out(source);
    REQUIRE(with.rows().size() == without.rows().size());
    CHECK_FALSE(without.places()[with.words()[0].row].words);
    int grown = 0;
    for (std::size_t row = 0; row < with.rows().size(); ++row)
        grown += with.places()[row].words.has_value();
    CHECK(grown == 1);
    CHECK(with.height() == Approx(without.height() + kWordsLine));
}

TEST_CASE("The pointer finds each word, and the ribbon's notes above it as before") {
    const auto source = with_words();
    const Layout layout = laid_out(source, 140);
    for (const auto& placed : layout.words()) {
        const auto& place = layout.places()[placed.row];
        const auto found = hit(layout, placed.left + placed.width / 2, place.top + *place.words - 4);
        REQUIRE(std::holds_alternative<WordHit>(found));
        CHECK(std::get<WordHit>(found).word == placed.word);
        CHECK(std::get<WordHit>(found).row == placed.row);
        CHECK_FALSE(std::holds_alternative<WordHit>(
            hit(layout, placed.left + placed.width / 2, place.top + place.staff_bottom - 4)));
    }
    CHECK(std::holds_alternative<PlaceHit>(
        hit(layout, 20,
            layout.places()[layout.words()[0].row].top + *layout.places()[layout.words()[0].row].words)));
}

TEST_CASE("A word that the coach has placed looks different from one that the program has put") {
    auto source = with_words();
    const auto picture = [&] {
        const Layout layout = laid_out(source);
        Canvas canvas = Canvas::picture(1000, static_cast<int>(layout.height()));
        canvas.clear(light_colours().paper);
        draw_row(canvas, layout, layout.words().front().row, {});
        const auto pixels = canvas.pixels();
        return std::vector<std::uint8_t>(pixels.bytes.begin(), pixels.bytes.end());
    };
    const auto before = picture();
    source.sung_words.front().placed = true;
    const auto placed = picture();
    CHECK(before != placed);
    source.sung_words.clear();
    source.sung_words = {word("\xff<b>&", source.marks.front().span().start.value())}; // of any kind
    CHECK(before != picture());
}

TEST_CASE("Poppler reads the words off the printed sheet") {
    const test::Folder folder;
    const auto source = with_words();
    write_pdf(source, folder / "sheet.pdf");
    const auto text = test::run("pdftotext -raw " + test::quoted(folder / "sheet.pdf") + " -");
    for (const char* one : {"Over", "wa", "ter", "evening", "foam;", "slow,"})
        CHECK(text.find(one) != std::string::npos);
}
