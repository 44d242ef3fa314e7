#include "desk/work/pages.h"
#include "desk/work/shades.h"
#include "desk/work/told.h"
#include "profile/demo_source.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;

TEST_CASE("A few letters find a shade, and shades that begin so come first") {
    const auto vocabulary = vocabulary::default_vocabulary();
    const auto found = find_shades(vocabulary, "glo");
    REQUIRE_FALSE(found.empty());
    CHECK(found.front().tag == vocabulary::Tag{"onset", "glottal"});
    CHECK(find_shades(vocabulary, "ons br").front().tag == vocabulary::Tag{"onset", "breathy"});
    CHECK(find_shades(vocabulary, "no such shade anywhere").empty());
    std::size_t all = 0;
    for (const auto& facet : vocabulary.facets)
        all += facet.shades.size();
    CHECK(find_shades(vocabulary, "").size() == all);
}

TEST_CASE("Shades used lately come before others that fit as well") {
    const auto vocabulary = vocabulary::default_vocabulary();
    const auto plain = find_shades(vocabulary, "");
    const auto last = plain.back().tag;
    CHECK(find_shades(vocabulary, "", {last}).front().tag == last);
}

TEST_CASE("Every mark is told with its title, its time, its state and its evidence") {
    const auto source = profile::demo::source(1);
    for (const auto& mark : source.marks) {
        const auto text = told(source, mark);
        CHECK(text.find(title_of(source, mark)) == 0);
        CHECK(text.find("roposed") != std::string::npos);
        CHECK(std::ranges::count(text, '\n') >= 1);
    }
}

TEST_CASE("The profile page is well-formed, and its links name spans of the recording") {
    const auto source = profile::demo::source(1);
    const auto page = profile_page(profile::make_profile(source), sheet::light_colours());
    const luft::test::Folder folder;
    luft::test::write_all(folder / "page.html", page);
    CHECK(luft::test::run("xmllint --html --noout " + luft::test::quoted(folder / "page.html")).empty());
    std::size_t links = 0;
    for (std::size_t at = page.find("href=\""); at != std::string::npos;
         at = page.find("href=\"", at + 1), ++links) {
        const auto from = at + 6, to = page.find('"', from);
        const auto span = linked_span(std::string_view(page).substr(from, to - from));
        REQUIRE(span);
        CHECK(span->start <= span->end); // a switch has no length
        CHECK(span->end.value() < 200);
    }
    CHECK(links > 5);
}

TEST_CASE("A link of another kind names no span") {
    for (const char* link : {"", "span:", "span:1", "span:x-2", "span:3-2", "span:1-2x", "http://1-2"})
        CHECK_FALSE(linked_span(link));
    CHECK(linked_span("span:1.5-2.25")->end == Seconds(2.25));
}
