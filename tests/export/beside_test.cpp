// Profiles side by side as text, JSON and a page.
#include "export/beside_html.h"
#include "export/beside_json.h"
#include "export/beside_text.h"
#include "export/page_file.h"
#include "export/plain_text.h"
#include "profile/beside_words.h"
#include "profile/demo_source.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <sstream>

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

TEST_CASE("of a performance not listened to yet, nothing is a number for other programs") {
    auto source = profile::demo::source();
    source.listening.reset();
    source.marks.clear();
    const auto profile = profile::make_profile(source);
    const auto json = nlohmann::json::parse(beside_json(profile::set_beside({profile, profile})));
    for (const char* key : {"sung_s", "notes", "breaths", "phrases", "switches", "tuning_hz", "lowest_midi"})
        CHECK(json["columns"][0].at(key).is_null());
}

TEST_CASE("each page says what its signs are, and the one with ranges what those are") {
    const auto all = three();
    const std::string page = beside_html(all), text = one_line(beside_text(all));
    CHECK(page.find("carries \xE2\x96\xB2 where it lies above all") != std::string::npos);
    CHECK(page.find("<td class=\"out\">\xE2\x96\xB2 ") != std::string::npos);
    CHECK(page.find("holds the middle 80 % of its values") != std::string::npos);
    CHECK(text.find("carries + where it lies above all that it was held against, and - where") !=
          std::string::npos);
}

TEST_CASE("figures of one performance stand in one column, whether or not one has a sign") {
    std::istringstream lines(beside_text(three()));
    std::vector<std::size_t> ends; // of the last performance's figures, without their sign
    for (std::string line; std::getline(lines, line);)
        if (line.starts_with("Length ") || line.starts_with("Tuning, A4 ") || line.starts_with("Notes ") ||
            line.starts_with("  Off ") || line.starts_with("  Vibrato rate ")) {
            if (line.ends_with(" +") || line.ends_with(" -")) line.resize(line.size() - 2);
            ends.push_back(line.size());
        }
    REQUIRE(ends.size() >= 4);
    CHECK(ends == std::vector<std::size_t>(ends.size(), ends.front()));
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
