// Pages made of rows, as Poppler reads them.
#include "sheet/flow.h"
#include "tools/folder.h"
#include "tools/pdf_words.h"

#include <catch2/catch.hpp>

#include <map>

using namespace luft;
using namespace luft::sheet;

namespace {

constexpr Type kPlain{11, false, false};
const Paper kPaper;

/// "a0 a1 a2 …"
std::string words(const std::string& name, int count) {
    std::string text;
    for (int i = 0; i < count; ++i)
        text += (i > 0 ? " " : "") + name + std::to_string(i);
    return text;
}

Text text_of(std::string said, bool heading = false) {
    return {.words = std::move(said), .type = kPlain, .colour = {}, .gap = 0, .heading = heading};
}

FlowRow row_of(const std::string& beside, const std::string& title, const std::string& said) {
    FlowRow row;
    row.cells = {{0, 80, {text_of(beside)}},
                 {100, kPaper.room_across() - 100, {text_of(title, true), text_of(said)}}};
    return row;
}

template <class Fill>
std::vector<test::PdfWord> printed(Fill fill) {
    const test::Folder folder;
    Canvas canvas = Canvas::pdf(folder / "a.pdf", kPaper.width, kPaper.height);
    Flow flow(canvas, kPaper);
    fill(flow);
    for (int page = 0; page < flow.pages(); ++page) {
        flow.draw(canvas, page);
        canvas.next_page();
    }
    canvas.finish();
    return test::pdf_words(folder / "a.pdf");
}

const test::PdfWord& word(const std::vector<test::PdfWord>& all, const std::string& text) {
    const auto found = std::ranges::find(all, text, &test::PdfWord::text);
    INFO(text);
    REQUIRE(found != all.end());
    return *found;
}

void check_fine(const std::vector<test::PdfWord>& all) {
    CHECK(test::overlaps(all) == 0);
    for (const auto& w : all) {
        INFO(w.text);
        CHECK(w.left >= kPaper.edge - 1);
        CHECK(w.right <= kPaper.width - kPaper.edge + 1);
        CHECK(w.top >= kPaper.edge - 2);
        CHECK(w.bottom <= kPaper.height - kPaper.edge - kPaper.foot + 2);
    }
}

} // namespace

TEST_CASE("a text longer than a page goes on on the next ones, every word once and in order") {
    const auto all = printed([](Flow& flow) { flow.text(text_of(words("w", 3000))); });
    check_fine(all);
    REQUIRE(all.size() == 3000);
    for (int i = 0; i < 3000; ++i)
        REQUIRE(all[static_cast<std::size_t>(i)].text == "w" + std::to_string(i));
    CHECK(all.back().page >= 3);
    int last_lines = 0; // on the last page: two lines at least
    double y = -1;
    for (const auto& w : all)
        if (w.page == all.back().page && w.top > y + 1) {
            y = w.top;
            ++last_lines;
        }
    CHECK(last_lines >= 2);
}

TEST_CASE("a row's other cells stand beside its first line only, and a heading is never left alone") {
    for (int lines_before = 30; lines_before < 60; ++lines_before) {
        const auto all = printed([&](Flow& flow) {
            for (int i = 0; i < lines_before; ++i)
                flow.text(text_of("line" + std::to_string(i)));
            flow.row(row_of("beside", "title", words("w", 900)));
        });
        INFO(lines_before);
        check_fine(all);
        CHECK(word(all, "beside").page == word(all, "title").page);
        CHECK(word(all, "beside").top == Approx(word(all, "title").top).margin(0.5));
        CHECK(word(all, "w0").page == word(all, "title").page);
        // Two lines stay with the title: the one before a line's first word ends the line before.
        const auto& second = *std::ranges::find_if(
            all, [&](const auto& w) { return w.text[0] == 'w' && w.top > word(all, "w0").top + 1; });
        CHECK(second.page == word(all, "title").page);
    }
}

TEST_CASE("what is kept together moves to the next page whole, and is broken only when no page can hold it") {
    for (const int size : {10, 200}) {
        const auto all = printed([&](Flow& flow) {
            for (int i = 0; i < 52; ++i)
                flow.text(text_of("line" + std::to_string(i)));
            flow.keep();
            for (int i = 0; i < size; ++i)
                flow.text(text_of("kept" + std::to_string(i)));
            flow.end_keep();
            flow.text(text_of("after"));
        });
        check_fine(all);
        const int first = word(all, "kept0").page, last = word(all, "kept" + std::to_string(size - 1)).page;
        if (size == 10) {
            CHECK(first == 2);
            CHECK(last == 2);
        } else {
            CHECK(first == 1); // no use in moving it
            CHECK(last > 2);
        }
    }
}

TEST_CASE("a table's head stands again on every page of the table, never alone, and not after it") {
    for (int lines_before = 45; lines_before < 56; ++lines_before) {
        const auto all = printed([&](Flow& flow) {
            for (int i = 0; i < lines_before; ++i)
                flow.text(text_of("line" + std::to_string(i)));
            FlowRow head;
            head.cells = {{0, 200, {text_of("head")}}};
            flow.head(head);
            for (int i = 0; i < 120; ++i) {
                if (i % 4 == 0) flow.keep();
                flow.row(row_of("b" + std::to_string(i), "t", i % 4 == 0 ? words("w", 80) : "x"));
                if (i % 4 == 0) flow.end_keep();
            }
            flow.end_head();
            for (int i = 0; i < 80; ++i)
                flow.text(text_of("after" + std::to_string(i)));
        });
        INFO(lines_before);
        check_fine(all);
        std::map<int, int> heads, rows;
        for (const auto& w : all) {
            if (w.text == "head") ++heads[w.page];
            if (w.text == "t") ++rows[w.page];
        }
        CHECK(heads.size() == rows.size());
        for (const auto& [page, count] : rows)
            CHECK(heads[page] == 1);
    }
}

TEST_CASE("white is left out at a page's top, a picture is drawn whole") {
    int drawn = 0;
    const auto all = printed([&](Flow& flow) {
        flow.space(300);
        flow.text(text_of("first"));
        flow.picture(kPaper.room_down() - 40, [&](Canvas& canvas) {
            ++drawn;
            canvas.text(0, 20, "drawn", kPlain, {});
        });
        flow.space(300);
        flow.text(text_of("last"));
    });
    CHECK(drawn == 1);
    CHECK(word(all, "first").top < kPaper.edge + 5);
    CHECK(word(all, "drawn").page == 1);
    CHECK(word(all, "last").page == 2);
    CHECK(word(all, "last").top < kPaper.edge + 5);
}

TEST_CASE("a flow without anything is one empty page") {
    Canvas canvas = Canvas::picture(1, 1);
    Flow flow(canvas, kPaper);
    CHECK(flow.pages() == 1);
    flow.draw(canvas, 0);
}

TEST_CASE("a word longer than a page goes on over pages, and none of it is lost") {
    const auto all = printed([](Flow& flow) { flow.text(text_of(std::string(20000, 'x'))); });
    check_fine(all);
    std::string said;
    int last = 0;
    for (const auto& w : all) {
        said += w.text;
        last = std::max(last, w.page);
    }
    CHECK(std::ranges::count(said, 'x') == 20000);
    CHECK(last > 1);
}
