// Profiles side by side as text, JSON and a page.
#include "export/beside_html.h"
#include "export/beside_json.h"
#include "export/beside_text.h"
#include "export/page_file.h"
#include "profile/beside_words.h"
#include "profile/demo_source.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

/// The demo song three times; the last time its notes lie a semitone's third high, and nothing was heard of
/// its breaths.
profile::Beside three() {
    std::vector<profile::Profile> profiles;
    for (const char* label : {"march", "may", "june"}) {
        auto source = profile::demo::source();
        source.performance.label = label;
        if (profiles.size() == 2) {
            std::erase_if(source.marks, [](const auto& m) { return m.kind() == project::MarkKind::breath; });
            for (auto& mark : source.marks)
                if (auto* note = std::get_if<marks::Note>(&mark.what)) {
                    note->pitch += MidiPitch(0.33);
                    note->cents += Cents(33);
                }
        }
        profiles.push_back(profile::make_profile(source));
    }
    return profile::set_beside(profiles);
}

std::string tidied(const PageFile& page) {
    return test::run("tidy -quiet -errors " + test::quoted(page.file) + " 2>&1 || true");
}

} // namespace

TEST_CASE("the page of profiles side by side has a column for each performance and a row for each figure") {
    const auto all = three();
    const PageFile page(beside_html(all));
    CHECK(tidied(page).empty());
    std::size_t rows = profile::whole_rows(all).size();
    for (const auto& facet : all.facets)
        rows += facet.rows.size();
    const std::string row = "//*[@class='beside']//*[local-name()='tbody']/*[local-name()='tr'][not(@class)]";
    CHECK(page.asked("count(" + row + ")") == std::to_string(rows));
    CHECK(page.asked("count(" + row + "[count(*[local-name()='td'])=4])") == std::to_string(rows));
    CHECK(page.count("section", "card") == 3);
    CHECK(page.asked("string(//*[local-name()='thead']//*[local-name()='th'][4])") == "june");
}

TEST_CASE("what stands out is said in words, and its figure has a sign") {
    const auto all = three();
    CHECK(all.columns[0].stands_out.empty());
    REQUIRE_FALSE(all.columns[2].stands_out.empty());
    int signs = 0, said = 0;
    for (const auto& column : all.columns)
        said += static_cast<int>(column.stands_out.size());
    for (const auto& facet : all.facets)
        for (const auto& row : facet.rows)
            for (const auto& cell : row.cells)
                signs += cell.stands != 0;
    CHECK(signs == said);
    const PageFile page(beside_html(all));
    CHECK(page.count("td", "out") == signs);
    const std::string text = beside_text(all);
    const auto june = text.find("\njune, sung by Mara Ellin\n  - Intonation: ");
    CHECK(june != std::string::npos);
    CHECK(text.find("\nmarch, sung by Mara Ellin\n  Nothing stands out") != std::string::npos);
    CHECK(text.find(" cents +\n") != std::string::npos);
}

TEST_CASE("side by side for other programs has one cell for each performance, null where there is none") {
    const auto json = nlohmann::json::parse(beside_json(three()));
    CHECK(json["schema"] == "luftpause-beside/1");
    REQUIRE(json["columns"].size() == 3);
    CHECK(json["columns"][2]["breaths"] == 0);
    bool breath = false, off = false;
    for (const auto& facet : json["facets"])
        for (const auto& row : facet["rows"]) {
            REQUIRE(row["cells"].size() == 3);
            if (row["figure"] == "breath_length_s") {
                breath = true;
                CHECK(row["cells"][0]["value"] == row["cells"][1]["value"]);
                CHECK(row["cells"][2].is_null());
            }
            if (row["figure"] == "off_pitch_cents") {
                off = true;
                CHECK(row["cells"][2]["stands"] == 1);
                CHECK(row["cells"][2]["value"].get<double>() - row["cells"][0]["value"].get<double>() ==
                      Approx(33).margin(0.2));
            }
        }
    CHECK(breath);
    CHECK(off);
}

TEST_CASE(
    "labels and names can't put markup on the page of profiles side by side, and nothing is a page, too") {
    auto all = three();
    const std::string evil = "<script>alert('x')</script> & \"more\"\x01\xFF";
    for (auto& column : all.columns)
        column.label = column.performer = column.source = evil, column.stands_out = {evil};
    for (auto& facet : all.facets) {
        facet.name = evil;
        for (auto& row : facet.rows)
            row.name = evil;
    }
    const std::string page = beside_html(all);
    CHECK(page.find("<script") == std::string::npos);
    CHECK(tidied(PageFile(page)).empty());
    CHECK(tidied(PageFile(beside_html({}))).empty());
    CHECK(beside_text({}).starts_with("Side by side: untitled"));
}
