#include "export/profile_html.h"
#include "export/profile_map.h"
#include "profile/demo_source.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::test;

namespace {

std::string html(const profile::Source& s) {
    return exports::profile_html(profile::make_profile(s), s);
}

/// Whether libxml2's command-line parser (Debian package libxml2-utils) takes the page as well-formed XML.
bool well_formed(const std::string& page) {
    const Folder folder;
    write_all(folder / "page.html", page);
    return run("xmllint --noout --nonet " + quoted(folder / "page.html") + " 2>/dev/null; echo $?") == "0\n";
}

} // namespace

TEST_CASE("An independent parser takes every profile page as well-formed") {
    run("xmllint --version"); // Debian package libxml2-utils
    CHECK_FALSE(well_formed("<html><p>left open</html>"));
    CHECK(well_formed(html(profile::demo::source())));
    CHECK(well_formed(html({})));
    auto bare = profile::demo::source();
    bare.curves = {};
    CHECK(well_formed(html(bare)));
}

TEST_CASE("Markup in names, remarks and the vocabulary is shown, not obeyed") {
    auto s = profile::demo::source();
    const std::string evil = "<script>alert('x')</script> & \"more\"\x01\xFF";
    s.piece.title = s.performance.performer = s.performance.source = s.performance.permission =
        s.performance.label = evil;
    for (auto& m : s.moments)
        m.remark = evil;
    for (auto& f : s.vocabulary.facets) {
        f.name = evil;
        for (auto& shade : f.shades)
            shade.name = evil;
    }
    for (auto& d : s.vocabulary.drills)
        d.title = d.aim = d.caution = evil;
    for (auto& mark : s.marks)
        if (auto* n = std::get_if<marks::Note>(&mark.what)) {
            n->onset.evidence = n->offset.evidence = evil;
            if (n->vowel) n->vowel->nearest = evil;
        }
    const auto page = html(s);
    CHECK(page.find("<script") == std::string::npos);
    CHECK(page.find("&lt;script&gt;") != std::string::npos);
    CHECK(well_formed(page));
}

TEST_CASE("A profile page needs nothing from elsewhere") {
    const auto page = html(profile::demo::source());
    for (const char* part : {"src=", "href=", "url(http", "@import", "<script", "<link"})
        CHECK(page.find(part) == std::string::npos);
    CHECK(page.find("three weeks") != std::string::npos);
    CHECK(page.find("diagnosis") != std::string::npos);
    CHECK(page.find("user&#39;s own responsibility") != std::string::npos);
}

TEST_CASE("The phrase map draws every phrase of a short song and says what it leaves out of a long one") {
    const auto one = exports::phrase_map(profile::demo::source());
    CHECK(one.shown == 10);
    CHECK(one.left_out == 0);
    const auto many = exports::phrase_map(profile::demo::source(20));
    CHECK(many.shown + many.left_out == 200);
    CHECK(many.left_out > 0);
    CHECK(many.html.find("The last " + std::to_string(many.left_out) + " lines are left out") !=
          std::string::npos);
    CHECK(exports::phrase_map({}).html.empty());
}

TEST_CASE("The page of an hour of singing stays under two megabytes") {
    CHECK(html(profile::demo::source(45)).size() < 2'000'000);
}
