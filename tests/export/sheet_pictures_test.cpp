// The sheet's rows as pictures, read back by FFmpeg.
#include "base/error.h"
#include "export/sheet_pictures.h"
#include "profile/demo_source.h"
#include "sheet/rows.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace luft;
using namespace luft::exports;

TEST_CASE("every sung row of the sheet is a picture, whole, of one width, with something on it") {
    const test::Folder folder;
    const auto source = profile::demo::source();
    const auto files = sheet_pictures(source, folder / "rows");
    // A row long enough for every phrase, as the sheet itself divides the song.
    const auto rows = sheet::rows(source, Seconds(60));
    CHECK(static_cast<std::ptrdiff_t>(files.size()) ==
          2 * std::ranges::count(rows, sheet::Row::Kind::sung, &sheet::Row::kind));
    CHECK(folder.names().size() == files.size() + 1);
    for (const auto& file : files) {
        if (file.extension() == ".svg") continue;
        CHECK(test::run("ffprobe -v error -show_entries stream=codec_name,width -of csv=p=0 " +
                        test::quoted(file)) == "png,1920\n");
        // Brightness from darkest to lightest: the ribbon and its words on light paper.
        const std::string range =
            test::run("ffmpeg -nostdin -v error -i " + test::quoted(file) +
                      " -vf signalstats,metadata=print:key=lavfi.signalstats.YMIN:file=- -f null -");
        const auto at = range.find("YMIN=");
        REQUIRE(at != std::string::npos);
        CHECK(std::stod(range.substr(at + 5)) < 120);
    }
    CHECK(files.front().filename() == "row-01.png");
}

TEST_CASE("a folder that can't be made is an error, and a stop leaves no half picture") {
    const test::Folder folder;
    test::write_all(folder / "file", "x");
    CHECK_THROWS_AS(sheet_pictures(profile::demo::source(), folder / "file"), Error);
    std::stop_source stop;
    const Progress progress(
        [&](double done, std::string_view) {
            if (done > 0.3) stop.request_stop();
        },
        stop.get_token());
    CHECK_THROWS_AS(sheet_pictures(profile::demo::source(), folder / "rows", progress), Stopped);
    const auto names = folder.names();
    CHECK(names.size() > 2);
    for (const auto& name : names)
        CHECK((name == "file" || name == "rows" || name.ends_with(".png") || name.ends_with(".svg")));
}

TEST_CASE("the drawing of a row is well-formed, as large as its picture, and needs neither font nor file") {
    const test::Folder folder;
    const auto files = sheet_pictures(profile::demo::source(), folder.path());
    REQUIRE(files.size() > 2);
    const std::string svg = test::quoted(folder / "row-01.svg");
    const auto asked = [&](const std::string& what) {
        return test::run("xmllint --nonet --xpath \"" + what + "\" " + svg);
    };
    CHECK(asked("string(/*/@width)") == "960px\n");
    const int height = std::stoi(asked("substring-before(/*/@height,'px')"));
    CHECK(test::run("ffprobe -v error -show_entries stream=height -of csv=p=0 " +
                    test::quoted(folder / "row-01.png")) == std::to_string(2 * height) + "\n");
    CHECK(asked("count(//*[local-name()='text' or local-name()='script'])") == "0\n");
    CHECK(std::stoi(asked("count(//*[local-name()='symbol'])")) > 5); // outlines of letters
    CHECK(
        asked(
            "count(//@*[local-name()='href'][not(starts-with(.,'#') or starts-with(.,'data:image/png'))])") ==
        "0\n");
}

TEST_CASE("rows of an earlier, longer run go, and nothing else does") {
    const test::Folder folder;
    for (const char* name : {"row-99.png", "row-100.svg", "row-099.png", "row-99.jpg", "row-99.png.txt",
                             "arrow-99.png", "row-.png", "row-9 9.png", "row-01.txt"})
        test::write_all(folder / name, "x");
    std::filesystem::create_directory(folder / "row-98.png");
    const auto files = sheet_pictures(profile::demo::source(), folder.path());
    const auto names = folder.names();
    CHECK(names.size() == files.size() + 8);
    for (const char* gone : {"row-99.png", "row-100.svg"})
        CHECK(std::ranges::count(names, gone) == 0);
}
