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
