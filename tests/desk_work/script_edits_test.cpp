// The script as it is edited in the window.
#include "base/error.h"
#include "desk.h"
#include "desk/work/script_edits.h"
#include "script/gather.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;
using project::ScriptItem;
using project::ScriptItemKind;

namespace {

script::Source source_of(const Desk& desk) {
    return script::gather(desk.session.project(), desk.session.source().performance);
}

void keep_moment(Desk& desk, double start, double end) {
    project::Moment moment;
    moment.performance = *desk.session.shown();
    moment.span = {Seconds(start), Seconds(end)};
    moment.remark = "Listen to the end of the line.";
    moment.verdict = project::Verdict::watch;
    desk.session.edit([&](project::Project& p) { p.add_moment(moment); });
}

} // namespace

TEST_CASE("a draft needs a kept moment, and says what it has made") {
    Desk desk;
    CHECK_THROWS_AS(draft_script(desk.session), Error);
    keep_moment(desk, 1, 2);
    CHECK(draft_script(desk.session) == "Drafted: 1 stop and 0 asides.");
    CHECK(desk.session.undo_label() == "draft the script for 'A'");
}

TEST_CASE("words that the coach writes are the coach's own, and a new draft leaves them alone") {
    Desk desk;
    keep_moment(desk, 1, 2);
    draft_script(desk.session);
    const auto drafted = source_of(desk).items;
    const auto stop = std::ranges::find(drafted, ScriptItemKind::stop, &ScriptItem::kind);
    REQUIRE(stop != drafted.end());
    set_words(desk.session, *stop, stop->text); // the same: no edit
    CHECK(desk.session.undo_label() == "draft the script for 'A'");
    set_words(desk.session, *stop, "In my words.");
    CHECK(draft_script(desk.session) == "Drafted: 1 stop and 0 asides; 1 part in your own words left alone.");
    const auto now = source_of(desk).items;
    const auto kept = std::ranges::find(now, stop->id, &ScriptItem::id);
    REQUIRE(kept != now.end());
    CHECK(kept->text == "In my words.");
    CHECK(kept->own_words);
}

TEST_CASE("a part that is given another time moves to its place in the list") {
    Desk desk;
    const auto first = add_to_script(desk.session, ScriptItemKind::stop, Seconds(1));
    add_to_script(desk.session, ScriptItemKind::stop, Seconds(3));
    ScriptItem item = source_of(desk).items.front();
    REQUIRE(item.id == first);
    item.at = Seconds(5);
    change_in_script(desk.session, item);
    CHECK(source_of(desk).items.back().id == first);
    remove_from_script(desk.session, first);
    CHECK(source_of(desk).items.size() == 1);
}

TEST_CASE("mending takes what helps, in one edit, and says what it was") {
    Desk desk;
    const auto id = add_to_script(desk.session, ScriptItemKind::stop, Seconds(2.3)); // inside a note
    const auto source = source_of(desk);
    const auto sheet = script::lay_out(source);
    REQUIRE(sheet.warnings.size() == 1);
    CHECK(mend(desk.session, source, sheet, 0) == "Halt at 0:02.5.");
    CHECK(source_of(desk).items.front().id == id);
    CHECK(source_of(desk).items.front().at == Seconds(2.5));
    CHECK(script::lay_out(source_of(desk)).warnings.empty());
    desk.session.undo();
    CHECK(source_of(desk).items.front().at == Seconds(2.3));
}
