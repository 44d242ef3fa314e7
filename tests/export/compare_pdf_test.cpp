// The report on two performances on paper, as Poppler reads it.
#include "export/compare_material.h"
#include "export/compare_pdf.h"
#include "export/compare_words.h"
#include "tools/folder.h"
#include "tools/pdf_words.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

struct Printed {
    explicit Printed(const compare::Comparison& comparison) {
        compare_pdf(comparison, source_of(comparison.a, comparison.side_a),
                    source_of(comparison.b, comparison.side_b), file);
        words = test::pdf_words(file);
        for (const auto& w : words) {
            INFO(w.text << " on page " << w.page);
            CHECK(w.right < 595 - 40);
            CHECK(w.bottom < 842 - 36);
        }
        CHECK(test::overlaps(words) == 0);
    }
    /// White space folded.
    [[nodiscard]] std::string text(const std::string& pages = {}) const {
        std::istringstream in(test::run("pdftotext " + pages + " " + test::quoted(file) + " -"));
        std::string out;
        for (std::string word; in >> word;)
            out += word + " ";
        return out;
    }

    test::Folder folder;
    std::filesystem::path file = folder / "compared.pdf";
    std::vector<test::PdfWord> words;
};

} // namespace

TEST_CASE("page one of the printed report holds all that there is to speak of first") {
    const auto c = comparison();
    const Printed printed(c);
    CHECK(test::run("pdfinfo " + test::quoted(printed.file)).find("A4") != std::string::npos);
    const std::string first = printed.text("-f 1 -l 1");
    std::size_t at = 0;
    const auto next = [&](const std::string& words) {
        INFO(words);
        at = first.find(words, at);
        REQUIRE(at != std::string::npos);
    };
    next("Harbour <Lamps>");
    next("late against early");
    next("late sings 2 semitones lower");
    next("Mara Lindqvist");
    next("To speak of first");
    for (const TalkPoint& point : talk_points(c)) {
        next(point.words);
        next(point.hear);
        next(point.sure);
    }
    next("Hear both places before you speak of one");
}

TEST_CASE("the printed report has the tempo's axes, every difference with its error, and the cautions") {
    const auto c = comparison();
    const std::string all = Printed(c).text();
    for (const char* said : {"speed of late, where early is 100 %", "125 %", "80 %", "time in early",
                             "Only in early: 0:20.0-0:30.0", "no counterpart", "4.8 cents", "-6.2 dB", "10 %",
                             "belongs to a doctor"})
        CHECK(all.find(said) != std::string::npos);
}

TEST_CASE("a hundred differences and labels of any length are printed whole, and so is nothing at all") {
    auto c = comparison();
    c.a.label = "a-label-as-long-as-that-of-a-file-from-a-phone-2026-05-03";
    c.piece.title = std::string(200, 'W');
    for (int i = 0; i < 100; ++i) {
        c.differences.push_back(c.differences[4]);
        c.differences.back().sentence = "No. " + std::to_string(i) + " of many, שלום \x01 \xFF.";
    }
    const std::string all = Printed(c).text();
    for (int i = 0; i < 100; ++i)
        CHECK(all.find("No. " + std::to_string(i) + " of many") != std::string::npos);
    CHECK(Printed({}).text().find("nothing in common") != std::string::npos);
}
