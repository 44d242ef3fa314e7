// The report on two performances as text, JSON and a page, read with other programs.
#include "base/text.h"
#include "export/compare_html.h"
#include "export/compare_json.h"
#include "export/compare_material.h"
#include "export/compare_text.h"
#include "export/compare_words.h"
#include "export/page_file.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

/// What HTML Tidy (Debian package tidy) says against a page; nothing when it is content.
std::string tidied(const PageFile& page) {
    return test::run("tidy -quiet -errors " + test::quoted(page.file) + " 2>&1 || true");
}

} // namespace

TEST_CASE("the page on two performances is HTML and XML without an error, whatever the labels are") {
    CHECK(tidied(PageFile(page_of(comparison()))).empty());
    auto evil = comparison();
    evil.a.label = evil.b.label = evil.piece.title = evil.a.source =
        "<script>alert('x')</script> & \"\x01\xFF";
    for (auto& d : evil.differences)
        d.sentence = evil.a.label;
    const std::string page = page_of(evil);
    CHECK(tidied(PageFile(page)).empty());
    CHECK(page.find("<script") == std::string::npos);
    compare::Comparison none;
    none.a.label = "a", none.b.label = "b";
    CHECK(tidied(PageFile(page_of(none))).empty());
    CHECK_FALSE(tidied(PageFile("<html><body><p>no title</p></body></html>")).empty());
}

TEST_CASE(
    "the page has the most telling differences first, each with where to hear it in both and how sure") {
    const PageFile page(page_of(comparison()));
    const auto point = [&](int i) {
        return page.asked("normalize-space(//*[local-name()='ol']/*[local-name()='li'][" + std::to_string(i) +
                          "])");
    };
    CHECK(page.asked("count(//*[local-name()='ol']/*[local-name()='li'])") == "3");
    CHECK(point(1) == "late joins two lines. late goes on. Hear early 0:09.0, late 0:07.2 \xC2\xB7 over "
                      "99\xC2\xA0% sure \xC2\xB7 no.\xC2\xA0"
                      "1 in the table");
    CHECK(point(2).starts_with("late sings <high> & \"sharp\". Hear early 0:14.0, late 0:11.2"));
    CHECK(point(2).find("81\xC2\xA0% sure, 8 times the measuring error") != std::string::npos);
    CHECK(point(3).starts_with("late fades."));
    CHECK(page.asked("normalize-space(//*[@class='lead'])").starts_with("late sings 2 semitones lower"));
    CHECK(page.count("section", "card") == 2);
}

TEST_CASE("the page's table has every difference with its size and what measuring error would give") {
    const auto all = comparison();
    const PageFile page(page_of(all));
    const std::string rows =
        "//*[local-name()='table'][@class='all']//*[local-name()='tbody']/*[local-name()='tr']";
    REQUIRE(page.asked("count(" + rows + ")") == std::to_string(all.differences.size()));
    for (std::size_t i = 0; i < all.differences.size(); ++i) {
        const auto cell = [&](int column) {
            return page.asked("string(" + rows + "[" + std::to_string(i + 1) + "]/*[local-name()='td'][" +
                              std::to_string(column) + "])");
        };
        const auto& d = all.differences[i];
        CHECK(cell(2) == (d.a ? clock_text(d.a->start) : "whole"));
        CHECK(cell(3) == (d.b ? clock_text(d.b->start) : "whole"));
        CHECK(cell(5) == size_words(d));
        CHECK(cell(1) == (i == 0 ? "" : std::to_string(i)));
    }
    CHECK(page.asked("string(" + rows + "[4]/*[local-name()='td'][6])") == "4.8 cents");
    CHECK(page.asked("string(" + rows + "[3]/*[local-name()='td'][6])") == "10 %");
}

TEST_CASE("the page draws the phrases that differ most, each once, with the numbers of the table") {
    const PageFile page(page_of(comparison()));
    const std::string drawn = "//*[local-name()='svg'][starts-with(@aria-label,'Drawn: ')]";
    REQUIRE(page.asked("count(" + drawn + ")") == "2");
    CHECK(page.asked("string(" + drawn + "[1]/@aria-label)") ==
          "Drawn: early 0:00.0-0:15.0, late 0:00.0-0:12.0; marked: 1, 2, 3");
    auto alike = comparison();
    alike.differences.resize(1);
    CHECK(PageFile(page_of(alike)).asked("count(" + drawn + ")") == "0");
}

TEST_CASE("what isn't sure and what only one of the two has is said in text and on the page") {
    const std::string text = compare_text(comparison());
    const PageFile page(page_of(comparison()));
    for (const std::string said :
         {"Not sure: 0:30.0-0:52.0 of early against 0:16.0-0:43.5 of late", "Only in early: 0:20.0-0:30.0"}) {
        CHECK(text.find(said) != std::string::npos);
        CHECK(page.asked("count(//*[local-name()='p'][starts-with(.,'" + said + "')])") == "1");
    }
    CHECK(text.find("0:00.0-0:15.0 (2 phrases)  0:00.0-0:12.0") != std::string::npos);
    CHECK(text.find("no counterpart") != std::string::npos);
    CHECK(text.find("To speak of first\n  1. late joins two lines.") != std::string::npos);
}

TEST_CASE("two songs that share nothing and two that differ in nothing are reported as that") {
    compare::Comparison apart = comparison();
    apart.alignment = {};
    CHECK(compare_text(apart) == "'early' and 'late' have nothing in common that could be found.\n");
    const PageFile page(page_of(apart));
    CHECK(page.asked("count(//*[local-name()='table'])") == "0");
    CHECK(page.asked("string(//*[@class='lead'])").find("nothing in common") != std::string::npos);
    auto alike = comparison();
    alike.differences.clear();
    CHECK(compare_text(alike).find("No difference beyond") != std::string::npos);
    CHECK(PageFile(page_of(alike)).asked("count(//*[@class='all'])") == "0");
}

TEST_CASE("the comparison for other programs has each difference with place, size and error") {
    const auto json = nlohmann::json::parse(compare_json(comparison()));
    CHECK(json["schema"] == "luftpause-comparison/1");
    CHECK(json["semitones"] == -2);
    REQUIRE(json["differences"].size() == 5);
    CHECK(json["differences"][0]["a"].is_null());
    const auto& level = json["differences"][4];
    CHECK(level["kind"] == "phrase level");
    CHECK(level["a"]["start_s"] == 31.0);
    CHECK(level["b"]["start_s"] == 17.0);
    CHECK(level["size"] == -6.2);
    CHECK(level["unit"] == "dB");
    CHECK(level["expected_error"] == 2.0);
    CHECK(json["stretches"][0]["knots_s"][1] == nlohmann::json({20.0, 16.0}));
}
