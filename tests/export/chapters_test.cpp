// Chapters of the programme.
#include "export/chapters.h"
#include "export/cue_material.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using namespace luft::script::testing;
using project::ScriptItemKind;

namespace {

std::string text_of(const script::Source& source) {
    return chapters_text(chapters(source, script::lay_out(source)));
}

} // namespace

TEST_CASE("chapters are the opening, the music, each stop and the closing, the first at 0:00") {
    script::Source source = material();
    source.items = {
        item(1, ScriptItemKind::opening, 0, words(25)), item(2, ScriptItemKind::stop, 24, words(150)),
        item(3, ScriptItemKind::stop, 44, "A short one."), item(4, ScriptItemKind::closing, 60, words(25))};
    source.moments = {moment(1, 15, 16, project::Verdict::watch, {{"onset", "breathy"}})};
    source.items[1].moment = project::MomentId{1};
    CHECK(text_of(source) == "0:00 Opening\n0:10 Harbour Lamps\n0:34 Stop 1: breathy onset\n"
                             "1:54 Stop 2: A short one.\n2:11 Closing\n");
}

TEST_CASE("the first chapter starts at 0:00 without an opening, too") {
    script::Source source = material();
    CHECK(text_of(source) == "0:00 Harbour Lamps\n");
    source.performance.facts.duration = Seconds(0);
    CHECK(text_of(source).empty());
}

TEST_CASE("chapters start at least ten seconds apart and no stop is lost") {
    script::Source source = material();
    source.items = {item(1, ScriptItemKind::opening, 0, words(5)), item(2, ScriptItemKind::stop, 12, "one"),
                    item(3, ScriptItemKind::stop, 12, "two"), item(4, ScriptItemKind::stop, 15, "three")};
    const auto all = chapters(source, script::lay_out(source));
    for (std::size_t i = 1; i < all.size(); ++i)
        CHECK(all[i].start - all[i - 1].start >= kLeastChapter);
    const std::string text = chapters_text(all);
    for (const char* title : {"Stop 1: one", "Stop 2: two", "Stop 3: three"})
        CHECK(text.find(title) != std::string::npos);
}

TEST_CASE("from an hour on chapters count hours, and no title brings in a line of its own") {
    CHECK(chapters_text({{Rational(3599), "a"},
                         {Rational(7199999, 2000), "b\n9:99\xE2\x80\xA8 c"},
                         {Rational(3723), "d"}}) == "59:59 a\n59:59 b 9:99 c\n1:02:03 d\n");
}
