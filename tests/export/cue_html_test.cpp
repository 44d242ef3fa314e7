// The printed cue sheet, checked by libxml2's xmllint.
#include "export/cue_html.h"
#include "export/cue_material.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using namespace luft::test;

namespace {

std::string html_of(const script::Source& source) {
    return cue_html(source, script::lay_out(source));
}

/// A page as a file.
struct Page {
    explicit Page(const std::string& html) { write_all(file, html); }
    Folder folder;
    std::filesystem::path file = folder / "cues.html";
};

/// What an XPath expression gives on the page, without the line end that xmllint adds.
std::string asked(const Page& page, const std::string& xpath) {
    std::string said = run("xmllint --nonet --xpath \"" + xpath + "\" " + quoted(page.file));
    while (said.ends_with('\n'))
        said.pop_back();
    return said;
}

} // namespace

TEST_CASE("the cue sheet is well-formed, and no text brings in markup") {
    const Page page(html_of(cue_source()));
    run("xmllint --nonet --noout " + quoted(page.file));
    CHECK(asked(page, "count(//*[local-name()='script'])") == "0");
    CHECK(asked(page, "string(//*[local-name()='h1'])") == "Harbour <Lamps> & \"Tides\"");
    const std::string words = asked(page, "string((//*[local-name()='p'][@class='words'])[2])");
    CHECK(words.find("<script>alert(1)</script>") != std::string::npos);
    CHECK(words.find("שלום עולם") != std::string::npos);
    CHECK(words.find("00:00:01.000 --> 00:00:02.000 'ok'") != std::string::npos);
}

TEST_CASE("the cue sheet has a row for every segment and aside, with timecode and words") {
    const auto sheet = script::lay_out(cue_source());
    const Page page(html_of(cue_source()));
    CHECK(asked(page, "count(//*[local-name()='tr'][@class='talk'])") == "4");
    CHECK(asked(page, "count(//*[local-name()='tr'][@class='play'])") == "3");
    CHECK(asked(page, "count(//*[local-name()='tr'][@class='replay'])") == "1");
    CHECK(asked(page, "count(//*[local-name()='tr'][@class='aside'])") == "1");
    const std::string first = asked(page, "string((//*[local-name()='tr'][@class='play'])[1])");
    CHECK(first.find("00:00:11;06") != std::string::npos);
    CHECK(first.find("halts for stop 1") != std::string::npos);
}

TEST_CASE("the cue sheet names the figures, what doesn't fit, the permission and who answers for quoting") {
    auto source = cue_source();
    source.items[3].at = Seconds(40);
    source.performance.permission.clear();
    const std::string html = html_of(source);
    CHECK(html.find("Longest quote") != std::string::npos);
    CHECK(html.find("cuts a sung note in two; the nearest phrase end is at 0:44.0.") != std::string::npos);
    CHECK(html.find("none noted") != std::string::npos);
    CHECK(html.find("responsibility under the law") != std::string::npos);
}

TEST_CASE("an empty script and an empty recording give a page, too") {
    script::Source source;
    const Page empty(html_of(source));
    run("xmllint --nonet --noout " + quoted(empty.file));
    source = cue_source();
    source.items.clear();
    const Page page(html_of(source));
    CHECK(asked(page, "count(//*[local-name()='tr'][@class='play'])") == "1");
}
