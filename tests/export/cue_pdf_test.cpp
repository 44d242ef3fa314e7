// The cue sheet on paper, as Poppler reads it.
#include "export/cue_material.h"
#include "export/cue_pdf.h"
#include "export/cue_rows.h"
#include "export/cue_time.h"
#include "tools/folder.h"
#include "tools/pdf_words.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using namespace luft::script::testing;
using project::ScriptItemKind;

namespace {

struct Printed {
    explicit Printed(const script::Source& source) : sheet(script::lay_out(source)) {
        cue_pdf(source, sheet, folder / "cues.pdf");
        words = test::pdf_words(folder / "cues.pdf");
        std::istringstream in(test::run("pdftotext " + test::quoted(folder / "cues.pdf") + " -"));
        for (std::string word; in >> word;)
            text += word + " ";
    }
    [[nodiscard]] bool says(const std::string& what) const { return text.find(what) != std::string::npos; }

    test::Folder folder;
    script::CueSheet sheet;
    std::vector<test::PdfWord> words;
    std::string text; ///< white space folded
};

} // namespace

TEST_CASE("the printed cue sheet is A4 and has figures, warnings, credits and cautions") {
    auto source = cue_source();
    source.items[3].at = Seconds(40); // inside a note
    const Printed printed(source);
    const auto info = test::run("pdfinfo " + test::quoted(printed.folder / "cues.pdf"));
    CHECK(info.find("A4") != std::string::npos);
    CHECK(test::overlaps(printed.words) == 0);
    REQUIRE(!printed.sheet.warnings.empty());
    for (const char* said : {"Harbour <Lamps> & \"Tides\"", "Mara Lindqvist", "Running time", "You speak",
                             "Quoted", "Longest quote", "Before you record", "letter of 3 May",
                             "belongs to a doctor", "29.97 frames a second, drop-frame", "1 of "})
        CHECK(printed.says(said));
    for (const auto& w : printed.sheet.warnings)
        CHECK(printed.says(w.words.substr(0, 20)));
}

TEST_CASE("every segment and aside is printed with its programme time, in order of time") {
    const Printed printed(cue_source());
    std::size_t at = printed.text.find("Programme");
    REQUIRE(at != std::string::npos);
    for (const auto& row : cue_rows(printed.sheet)) {
        at = printed.text.find(programme_timecode(printed.sheet, row.start()), at);
        INFO(programme_timecode(printed.sheet, row.start()));
        REQUIRE(at != std::string::npos);
    }
    CHECK(printed.text.find("End of the programme", at) != std::string::npos);
    CHECK(printed.says("Again at half speed"));
    CHECK(printed.says("Listen to the harbour bell."));
    CHECK(printed.says("She said \"no\" --> & <script>"));
}

TEST_CASE("a script of many pages loses no word, cuts no line and lets nothing overlap") {
    script::Source source = material();
    source.performance.facts.duration = Seconds(3600);
    std::vector<std::string> spoken;
    for (int i = 0; i < 40; ++i) {
        std::string text;
        for (int k = 0; k < (i == 7 ? 1500 : 20 + 13 * (i % 9)); ++k) { // one stop longer than a page
            spoken.push_back("s" + std::to_string(i) + "k" + std::to_string(k));
            text += (k > 0 ? " " : "") + spoken.back();
        }
        source.items.push_back(item(i + 1, ScriptItemKind::stop, 60.0 + 80 * i, text));
    }
    const Printed printed(source);
    CHECK(test::overlaps(printed.words) == 0);
    std::vector<std::string> read;
    for (const auto& w : printed.words) {
        if (w.text.size() > 3 && w.text[0] == 's' && w.text.find('k') != std::string::npos &&
            w.text.find_first_not_of("sk0123456789") == std::string::npos)
            read.push_back(w.text);
        CHECK(w.bottom < 842 - 40);
        CHECK(w.right < 595 - 40);
    }
    // The titles of the stops repeat the first words.
    for (const auto& word : spoken)
        if (std::ranges::count(read, word) == 0) FAIL(word << " is missing");
    std::size_t at = 0;
    for (const auto& word : read)
        if (at < spoken.size() && word == spoken[at]) ++at;
    CHECK(at == spoken.size());
}

TEST_CASE("texts without words, without spaces, from right to left and with broken bytes can be printed") {
    script::Source source = cue_source();
    source.piece.title = std::string(400, 'M');
    source.performance.performer = "שלום\x01 עולם";
    source.items[1].text = "";
    source.items[4].text = "broken \xC3 byte, e\xCC\x81, \x02 control " + std::string(3000, 'x');
    const Printed printed(source);
    CHECK(test::overlaps(printed.words) == 0);
    CHECK(printed.says("no words yet"));
    CHECK(printed.says("control"));
    for (const auto& w : printed.words)
        CHECK(w.right < 595 - 40);
}

TEST_CASE("a cue sheet that can't be printed leaves nothing") {
    const test::Folder folder;
    const auto source = cue_source();
    const auto sheet = script::lay_out(source);
    CHECK_THROWS_AS(cue_pdf(source, sheet, folder / "gone/cues.pdf"), Error);
    std::stop_source stop;
    stop.request_stop();
    CHECK_THROWS_AS(cue_pdf(source, sheet, folder / "cues.pdf", Progress({}, stop.get_token())), Stopped);
    CHECK(folder.names().empty());
}
