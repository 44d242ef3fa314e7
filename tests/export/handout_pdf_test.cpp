// The handout on paper, as Poppler reads it.
#include "base/text.h"
#include "export/drill_places.h"
#include "export/handout_pdf.h"
#include "export/phrase_pictures.h"
#include "profile/demo_source.h"
#include "tools/folder.h"
#include "tools/pdf_words.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <sstream>

using namespace luft;
using namespace luft::exports;

namespace {

std::string folded(const std::string& text) {
    std::istringstream in(text);
    std::string out;
    for (std::string word; in >> word;)
        out += word + " ";
    return out;
}

std::string printed(const profile::Profile& profile, const profile::Source& source) {
    const test::Folder folder;
    handout_pdf(profile, source, folder / "a.pdf");
    for (const auto& w : test::pdf_words(folder / "a.pdf")) {
        INFO(w.text);
        CHECK(w.right < 595 - 40);
        CHECK(w.bottom < 842 - 36);
    }
    return folded(test::run("pdftotext -layout " + test::quoted(folder / "a.pdf") + " -"));
}

} // namespace

TEST_CASE("the printed handout has the doctor first, then every drill with steps, care and places in order") {
    const auto source = profile::demo::source();
    const auto profile = profile::make_profile(source);
    REQUIRE(profile.drills.size() > 2);
    const std::string text = printed(profile, source);
    std::size_t at = text.find("belongs to a doctor");
    REQUIRE(at != std::string::npos);
    const auto next = [&](const std::string& words) {
        INFO(words);
        std::string start = folded(words).substr(0, 30);
        start.pop_back(); // what ends the words may follow without a space
        at = text.find(start, at);
        REQUIRE(at != std::string::npos);
    };
    for (const auto& drill : profile.drills) {
        next(drill.title);
        for (const auto& step : drill.steps)
            next(step);
        if (!drill.caution.empty()) next("Take care: " + drill.caution);
        for (const auto& place : drill_places(profile, drill.key))
            next(place_time(place));
    }
    next("Please keep in mind");
}

TEST_CASE("the phrases in which a drill's places lie are drawn, with their note names") {
    const auto source = profile::demo::source();
    const auto profile = profile::make_profile(source);
    const PhrasePictures pictures(source, 780);
    const std::string text = printed(profile, source);
    const std::string without = printed(profile, {});
    for (const auto& drill : profile.drills)
        for (const auto& phrase : pictures.of(drill_places(profile, drill.key)))
            CHECK(text.find(clock_text(phrase.sung.start)) != std::string::npos);
    CHECK(text.find(" G4 ") != std::string::npos);
    CHECK(without.find(" G4 ") == std::string::npos);
}

TEST_CASE("a phrase is drawn once however many places lie in it, and a place over two phrases has both") {
    const auto source = profile::demo::source();
    const PhrasePictures pictures(source, 780);
    std::vector<Span> phrases;
    for (const auto& mark : source.marks)
        if (mark.kind() == project::MarkKind::phrase) phrases.push_back(mark.span());
    const Span a = phrases[0], b = phrases[1];
    const auto at = [](Seconds from, Seconds to) { return profile::Example{{from, to}, ""}; };
    const auto once = pictures.of({at(a.start, a.start + Seconds(1)), at(a.end - Seconds(1), a.end)});
    REQUIRE(once.size() == 1);
    CHECK(once[0].places.size() == 2);
    CHECK(once[0].sung.start == a.start);
    CHECK(pictures.of({at(a.end - Seconds(0.5), b.start + Seconds(0.5))}).size() == 2);
    CHECK(pictures.of({at(Seconds(9999), Seconds(10000))}).empty());
    CHECK(pictures.of({}).empty());
}

TEST_CASE("a drill without end and texts of all kinds can be printed, an empty profile too") {
    profile::Profile p;
    CHECK(printed(p, {}).find("asks for no drill") != std::string::npos);
    p.piece = std::string(300, 'W');
    vocabulary::Drill drill;
    drill.key = "own";
    drill.title = "שלום \x01 <b>";
    for (int i = 0; i < 150; ++i)
        drill.steps.push_back("step" + std::to_string(i) + " and \xFF then e\xCC\x81");
    p.drills = {drill, drill};
    const std::string text = printed(p, {});
    for (int i = 0; i < 150; ++i)
        CHECK(text.find(std::to_string(i + 1) + ". step" + std::to_string(i) + " and") != std::string::npos);
}
