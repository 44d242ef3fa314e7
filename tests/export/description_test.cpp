// The text that is published with a programme.
#include "export/chapters.h"
#include "export/cue_material.h"
#include "export/description.h"
#include "export/page.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

std::string text_of(const script::Source& source) {
    return description(source, script::lay_out(source));
}

} // namespace

TEST_CASE("the description has chapters from 0:00, credits, permission and cautions") {
    const auto source = cue_source();
    const std::string text = text_of(source);
    CHECK(text.starts_with("Harbour <Lamps> & \"Tides\", sung by Mara Lindqvist: a voice teacher listens\n"));
    const std::string list = chapters_text(chapters(source, script::lay_out(source)));
    REQUIRE(list.starts_with("0:00 "));
    CHECK(text.find("\nChapters\n" + list + "\n") != std::string::npos);
    for (const char* line :
         {"\nWritten by: Ida Quill\n", "\nPerformed by: Mara Lindqvist\n",
          "\nRecording: phone video of a house concert\n", "\nPermission: letter of 3 May\n"})
        CHECK(text.find(line) != std::string::npos);
    for (const auto& caution : cautions())
        CHECK(text.find("\n" + caution + "\n") != std::string::npos);
}

TEST_CASE("what isn't noted is said to be missing in the description") {
    const std::string text = text_of(script::Source{});
    CHECK(text.starts_with("A recording: a voice teacher listens\n\nCredits\n")); // no chapters
    CHECK(text.find("Permission: none noted. Settle this before the programme is published.") !=
          std::string::npos);
}

TEST_CASE("no text adds a line to the description") {
    auto source = cue_source();
    const auto lines = [&] { return std::ranges::count(text_of(source), '\n'); };
    const auto before = lines();
    source.performance.permission = "yes\n0:00 Chapter\xE2\x80\xA8of mine \xFF";
    source.piece.writer = "Ida\r\n\r\nPermission: granted";
    CHECK(lines() == before);
    CHECK(text_of(source).find("Permission: yes 0:00 Chapter of mine \xEF\xBF\xBD\n") != std::string::npos);
}
