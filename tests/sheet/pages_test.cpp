#include "base/text.h"
#include "profile/demo_source.h"
#include "sheet/pages.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;

TEST_CASE("Poppler reads the printed sheet: title, every phrase's time, page numbers, A4") {
    const test::Folder folder;
    auto source = profile::demo::source(2);
    source.performance.performer = "Ilse Marnik";
    const auto file = folder / "sheet.pdf";
    const int pages = sheet::write_pdf(source, file);
    CHECK(pages > 1);
    const auto info = test::run("pdfinfo " + test::quoted(file));
    CHECK(info.find("Pages:           " + std::to_string(pages)) != std::string::npos);
    CHECK(info.find("A4") != std::string::npos);
    const auto text = test::run("pdftotext -layout " + test::quoted(file) + " -");
    CHECK(text.find(source.piece.title) != std::string::npos);
    CHECK(text.find("Ilse Marnik") != std::string::npos);
    CHECK(text.find("breath, heard") != std::string::npos);
    for (const auto& mark : source.marks)
        if (mark.kind() == project::MarkKind::phrase)
            CHECK(text.find(clock_text(mark.span().start)) != std::string::npos);
}

TEST_CASE("A PDF that can't be written leaves nothing behind and says so") {
    const test::Folder folder;
    const auto source = profile::demo::source(1);
    const auto file = folder / "gone" / "sheet.pdf";
    CHECK_THROWS_AS(sheet::write_pdf(source, file), Error);
    CHECK_FALSE(std::filesystem::exists(file));
}

TEST_CASE("Printing that is stopped leaves nothing behind") {
    const test::Folder folder;
    const auto source = profile::demo::source(1);
    std::stop_source stop;
    stop.request_stop();
    CHECK_THROWS_AS(sheet::write_pdf(source, folder / "sheet.pdf", Progress({}, stop.get_token())), Stopped);
    CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE("Every row is on exactly one page, and what a place of a page shows follows the song") {
    const auto source = profile::demo::source(2);
    const sheet::Pages pages(source);
    REQUIRE(pages.count() > 1);
    CHECK_FALSE(pages.time_at(0, 100, 10)); // the heading
    Seconds last{-1};
    int places = 0;
    for (int page = 0; page < pages.count(); ++page)
        for (double y = 0; y < sheet::kPageHeight; y += 1) {
            const auto time = pages.time_at(page, 90, y);
            if (!time) continue;
            CHECK(*time >= last);
            places += *time > last;
            last = *time;
        }
    CHECK(places >= static_cast<int>(sheet::rows(source, Seconds(1000)).size()));
}

TEST_CASE("A performance without a note still prints one page") {
    profile::Source source;
    source.performance.facts.duration = Seconds(20);
    CHECK(sheet::Pages(source).count() == 1);
}
