// Moments that are proposed, and scripts that are drafted, over what the coach has done.
#include "desk.h"

using namespace desk;

namespace {

Moment proposal(const Sample& s, double start, double end, std::vector<vocabulary::Tag> shades) {
    Moment m;
    m.performance = s.a;
    m.span = span(start, end);
    m.shades = std::move(shades);
    m.evidence = "measured";
    return m;
}

ScriptItem item(const Sample& s, ScriptItemKind kind, double at, const std::string& text) {
    ScriptItem i;
    i.performance = s.a;
    i.kind = kind;
    i.at = Seconds(at);
    i.text = text;
    return i;
}

std::string texts(const Sample& s) {
    std::string all;
    int position = 0;
    for (const ScriptItem& i : s.project.script(s.a)) {
        CHECK(i.position == ++position);
        all += i.text + " ";
    }
    return all;
}

} // namespace

TEST_CASE("proposals replace untouched ones, and leave out what the coach has dealt with") {
    Sample s;
    const vocabulary::Tag hard{"onset", "glottal"};
    const vocabulary::Tag wide{"vibrato", "wide"};
    CHECK(s.project.propose_moments(s.a, {proposal(s, 0, 1, {hard}), proposal(s, 1, 2, {wide}),
                                          proposal(s, 2, 3, {hard, wide})}) == 3);
    const auto first = s.project.moments(s.a);
    REQUIRE(first.size() == 3);
    CHECK(first[0].state == MarkState::proposed);
    CHECK(first[0].origin == Origin::detected);
    s.project.set_moment_state(first[0].id, MarkState::dropped);
    Moment changed = first[1];
    changed.remark = "mine";
    s.project.change_moment(changed);
    CHECK(s.project.moment(first[1].id).state == MarkState::kept);

    const int stored =
        s.project.propose_moments(s.a, {proposal(s, 0.5, 1.2, {hard}),       // dropped before
                                        proposal(s, 1.5, 2.5, {wide}),       // changed by the coach before
                                        proposal(s, 0.5, 1.2, {wide, hard}), // other shades: something else
                                        proposal(s, 2.5, 2.9, {hard})});     // elsewhere
    CHECK(stored == 2);
    const auto now = s.project.moments(s.a, true);
    REQUIRE(now.size() == 4);
    CHECK(now[0].id == first[0].id);
    CHECK(now[2].id == first[1].id);
    CHECK(now[2].remark == "mine");
    CHECK(now[3].span == span(2.5, 2.9));
}

TEST_CASE("proposing the same again changes nothing, and a proposal in the script stays") {
    Sample s;
    const std::vector<Moment> same = {proposal(s, 0, 1, {{"onset", "glottal"}})};
    s.project.propose_moments(s.a, same);
    const auto entries = s.project.journal().size();
    const MomentId id = s.project.moments(s.a)[0].id;
    CHECK(s.project.propose_moments(s.a, same) == 1);
    CHECK(s.project.moments(s.a)[0].id == id);
    CHECK(s.project.journal().size() == entries);
    ScriptItem stop = item(s, ScriptItemKind::stop, 1, "x");
    stop.moment = id;
    s.project.add_script_item(stop);
    CHECK(s.project.propose_moments(s.a, {}) == 0);
    CHECK(s.project.moments(s.a)[0].id == id);
}

TEST_CASE("script items without a position go where their time puts them, openings first, closings last") {
    Sample s;
    s.project.add_script_item(item(s, ScriptItemKind::stop, 2, "two"));
    s.project.add_script_item(item(s, ScriptItemKind::closing, 0, "end"));
    s.project.add_script_item(item(s, ScriptItemKind::aside, 1, "one"));
    s.project.add_script_item(item(s, ScriptItemKind::opening, 0, "hello"));
    s.project.add_script_item(item(s, ScriptItemKind::stop, 2, "two-again"));
    CHECK(texts(s) == "hello one two two-again end ");
    ScriptItem placed = item(s, ScriptItemKind::stop, 0.5, "placed");
    placed.position = 2;
    s.project.add_script_item(placed);
    CHECK(texts(s) == "hello placed one two two-again end ");
    ScriptItem moved = s.project.script(s.a)[4];
    moved.position = 1;
    s.project.change_script_item(moved);
    CHECK(texts(s) == "two-again hello placed one two end ");
    s.project.remove_script_item(moved.id);
    CHECK(texts(s) == "hello placed one two end ");
}

TEST_CASE("words that change lose the time that was measured for them") {
    Sample s;
    ScriptItem stop = item(s, ScriptItemKind::stop, 1, "first words");
    stop.id = s.project.add_script_item(stop);
    stop.rehearsed = Seconds(3);
    s.project.change_script_item(stop);
    CHECK(s.project.script(s.a)[0].rehearsed == Seconds(3));
    stop.text = "other words";
    s.project.change_script_item(stop);
    CHECK_FALSE(s.project.script(s.a)[0].rehearsed);
    stop.text = "third words";
    stop.rehearsed = Seconds(4);
    s.project.change_script_item(stop);
    CHECK(s.project.script(s.a)[0].rehearsed == Seconds(4));
}

TEST_CASE("several parts of a script change in one edit, and one undo takes it back") {
    Sample s;
    ScriptItem one = item(s, ScriptItemKind::stop, 1, "one");
    one.id = s.project.add_script_item(one);
    s.project.add_script_item(item(s, ScriptItemKind::stop, 2, "two"));
    one.at = Seconds(2.5);
    one.position = 0;
    s.project.change_script(s.a, {one, item(s, ScriptItemKind::stop, 2.2, "new")}, "mend it");
    CHECK(texts(s) == "two new one ");
    CHECK(s.project.undo() == "mend it");
    CHECK(texts(s) == "one two ");
    const PerformanceId other = s.add("b.wav", "B");
    CHECK_THROWS_AS(s.project.change_script(other, {one}, "another's"), Error);
    CHECK(texts(s) == "one two ");
}

TEST_CASE("a new draft never touches the coach's own words") {
    Sample s;
    ScriptItem own = item(s, ScriptItemKind::stop, 1, "MY WORDS");
    own.own_words = true;
    own.id = s.project.add_script_item(own);
    const ScriptItemId drafted = s.project.add_script_item(item(s, ScriptItemKind::stop, 2, "drafted"));
    s.project.add_script_item(item(s, ScriptItemKind::stop, 2.5, "unwanted"));

    ScriptItem again = s.project.script(s.a)[1];
    REQUIRE(again.id == drafted);
    again.text = "drafted anew";
    s.project.store_script(s.a, {item(s, ScriptItemKind::opening, 0, "hello"), again});
    CHECK(texts(s) == "hello MY WORDS drafted anew ");
    CHECK(s.project.script(s.a)[2].id == drafted);

    ScriptItem over = own;
    over.text = "overwritten";
    over.own_words = false;
    s.project.store_script(s.a, {over});
    CHECK(texts(s) == "MY WORDS ");
    CHECK(s.project.script(s.a)[0].own_words);
    s.project.store_script(s.a, {});
    CHECK(texts(s) == "MY WORDS ");
    CHECK(s.project.undo() == "draft the script for 'A'");
}

TEST_CASE("script items that make no sense are refused, and the script stays as it was") {
    Sample s;
    s.project.add_script_item(item(s, ScriptItemKind::stop, 2, "two"));
    const auto bad = [&](auto change, Fault fault = Fault::bad_request) {
        ScriptItem i = item(s, ScriptItemKind::stop, 1, "bad");
        change(i);
        CHECK(fault_of([&] { s.project.store_script(s.a, {i}); }) == fault);
    };
    bad([](ScriptItem& i) { i.at = Seconds(-1); });
    bad([](ScriptItem& i) { i.at = Seconds(NAN); });
    bad([](ScriptItem& i) { i.replay = span(1, 1); });
    bad([](ScriptItem& i) { i.replay_speed = 0.2; });
    bad([](ScriptItem& i) { i.replay_speed = 1.01; });
    bad([](ScriptItem& i) { i.resume = Seconds(-1); });
    bad([](ScriptItem& i) { i.rehearsed = Seconds(-1); });
    bad([](ScriptItem& i) { i.moment = MomentId{55}; });
    bad([](ScriptItem& i) { i.id = {55}; }, Fault::not_found);
    CHECK(fault_of([&] { s.project.remove_script_item({55}); }) == Fault::not_found);
    CHECK(texts(s) == "two ");
}

TEST_CASE("the times of a rehearsal are kept as one edit, and taken back as one") {
    Sample s;
    const auto opening = s.project.add_script_item(item(s, ScriptItemKind::opening, 0, "Good evening"));
    const auto first = s.project.add_script_item(item(s, ScriptItemKind::stop, 1, "one"));
    const auto second = s.project.add_script_item(item(s, ScriptItemKind::stop, 2, "two"));
    const auto times = [&] {
        std::vector<std::optional<Seconds>> all;
        for (const ScriptItem& i : s.project.script(s.a))
            all.push_back(i.rehearsed);
        return all;
    };
    s.project.set_rehearsed({{opening, Seconds(4.5)}, {second, Seconds(7)}});
    CHECK(times() == std::vector<std::optional<Seconds>>{Seconds(4.5), {}, Seconds(7)});
    s.project.set_rehearsed({{opening, {}}, {first, Seconds(3)}});
    CHECK(times() == std::vector<std::optional<Seconds>>{{}, Seconds(3), Seconds(7)});
    CHECK(s.project.undo() == "keep the rehearsed times");
    CHECK(times() == std::vector<std::optional<Seconds>>{Seconds(4.5), {}, Seconds(7)});
    CHECK(s.project.undo() == "keep the rehearsed times");
    CHECK(times() == std::vector<std::optional<Seconds>>(3));
    CHECK(texts(s) == "Good evening one two ");
}

TEST_CASE("rehearsed times that make no sense, or of no item, store none of them") {
    Sample s;
    const auto stop = s.project.add_script_item(item(s, ScriptItemKind::stop, 1, "one"));
    CHECK(fault_of([&] {
              s.project.set_rehearsed({{stop, Seconds(3)}, {{999}, Seconds(3)}});
          }) == Fault::not_found);
    CHECK(fault_of([&] {
              s.project.set_rehearsed({{stop, Seconds(3)}, {stop, Seconds(-1)}});
          }) == Fault::bad_request);
    CHECK_FALSE(s.project.script(s.a)[0].rehearsed);
}
