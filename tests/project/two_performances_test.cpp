// What ties two performances together in the project file: quotes of the other one, and pins.
#include "compare.h"

using namespace desk;

namespace {

struct Pair : Sample {
    PerformanceId b = add("b.wav", "B");

    Moment comparing(PerformanceId with) {
        Moment m;
        m.performance = a;
        m.span = span(0.5, 1.5);
        m.beside = Quote{with, span(0.25, 1.0 / 3)};
        return m;
    }
    ScriptItem stop() {
        ScriptItem item;
        item.performance = a;
        item.at = Seconds(1.5);
        item.quote = Quote{b, span(1.0 / 7, 2)};
        return item;
    }
};

std::vector<Pin> pins(std::initializer_list<std::pair<double, double>> times) {
    std::vector<Pin> all;
    for (const auto& [a, b] : times)
        all.push_back({Seconds(a), Seconds(b)});
    return all;
}

} // namespace

TEST_CASE("a moment comes back with the counterpart it compares with, and loses it when told to") {
    Pair s;
    const MomentId id = s.project.add_moment(s.comparing(s.b));
    s.reopen();
    CHECK(s.project.moment(id).beside == s.comparing(s.b).beside);
    CHECK(s.project.moments(s.a).front().beside == s.comparing(s.b).beside);
    Moment changed = s.project.moment(id);
    changed.beside->span = span(1, 2);
    s.project.change_moment(changed);
    CHECK(s.project.moment(id).beside == Quote{s.b, span(1, 2)});
    changed.beside.reset();
    s.project.change_moment(changed);
    CHECK_FALSE(s.project.moment(id).beside);
    s.project.undo();
    CHECK(s.project.moment(id).beside == Quote{s.b, span(1, 2)});
}

TEST_CASE("a stop comes back with what it quotes; no other part of a script quotes") {
    Pair s;
    const ScriptItemId id = s.project.add_script_item(s.stop());
    s.reopen();
    CHECK(s.project.script(s.a).front().quote == s.stop().quote);
    ScriptItem changed = s.project.script(s.a).front();
    changed.quote.reset();
    s.project.change_script_item(changed);
    CHECK_FALSE(s.project.script(s.a).front().quote);
    s.project.remove_script_item(id);
    CHECK(s.project.check().empty());
    ScriptItem aside = s.stop();
    aside.kind = ScriptItemKind::aside;
    CHECK(fault_of([&] { s.project.add_script_item(aside); }) == Fault::bad_request);
}

TEST_CASE("a quote of one's own performance, of none, or of no length is refused") {
    Pair s;
    CHECK(fault_of([&] { s.project.add_moment(s.comparing(s.a)); }) == Fault::bad_request);
    CHECK(fault_of([&] { s.project.add_moment(s.comparing({99})); }) == Fault::not_found);
    for (const Span wrong : {span(1, 1), span(-1, 1), span(0, std::nan(""))}) {
        Moment m = s.comparing(s.b);
        m.beside->span = wrong;
        CHECK(fault_of([&] { s.project.add_moment(m); }) == Fault::bad_request);
        ScriptItem item = s.stop();
        item.quote->span = wrong;
        CHECK(fault_of([&] { s.project.add_script_item(item); }) == Fault::bad_request);
    }
    CHECK(s.project.moments(s.a).empty());
    CHECK(s.project.script(s.a).empty());
}

TEST_CASE("pins are those of both performances, whichever is named first") {
    Pair s;
    s.project.set_pins(s.b, s.a, pins({{2, 1.5}, {0.5, 0.25}}));
    s.reopen();
    CHECK(s.project.pins(s.b, s.a) == pins({{0.5, 0.25}, {2, 1.5}}));
    CHECK(s.project.pins(s.a, s.b) == pins({{0.25, 0.5}, {1.5, 2}}));
    s.project.set_pins(s.a, s.b, pins({{1.5, 2}}));
    CHECK(s.project.pins(s.b, s.a) == pins({{2, 1.5}}));
    s.project.undo();
    CHECK(s.project.pins(s.a, s.b).size() == 2);
}

TEST_CASE("pins that cross, share a time, lie before the start, or tie a performance to itself are refused") {
    Pair s;
    s.project.set_pins(s.a, s.b, pins({{1, 1}}));
    for (const auto& wrong : {pins({{1, 2}, {2, 1}}), pins({{1, 2}, {1, 3}}), pins({{1, 2}, {2, 2}}),
                              pins({{-1, 2}}), pins({{1, std::nan("")}})})
        CHECK(fault_of([&] { s.project.set_pins(s.a, s.b, wrong); }) == Fault::bad_request);
    CHECK(fault_of([&] { s.project.set_pins(s.a, s.a, pins({{1, 1}})); }) == Fault::bad_request);
    CHECK(fault_of([&] { s.project.set_pins(s.a, {99}, pins({{1, 1}})); }) == Fault::not_found);
    CHECK(s.project.pins(s.a, s.b) == pins({{1, 1}}));
}

TEST_CASE("what quotes a performance goes with it, and one undo brings all back") {
    Pair s;
    const MomentId moment = s.project.add_moment(s.comparing(s.b));
    s.project.add_script_item(s.stop());
    s.project.set_pins(s.a, s.b, pins({{1, 1}}));
    const std::string before = contents(s.file, false);
    const PerformanceId gone = GENERATE(0, 1) == 0 ? s.a : s.b;
    s.project.remove_performance(gone);
    CHECK(s.project.check().empty());
    CHECK(s.project.pins(s.a, s.b).empty());
    if (gone == s.b) {
        CHECK_FALSE(s.project.moment(moment).beside);
        CHECK_FALSE(s.project.script(s.a).front().quote);
    }
    s.project.undo();
    CHECK((contents(s.file, false) == before));
}

TEST_CASE("check reports quotes and pins that can't be") {
    for (const char* harm :
         {"UPDATE moment_beside SET start_s = 9", "UPDATE moment_beside SET performance = 99",
          "UPDATE script_quote SET start_s = -1", "UPDATE script_quote SET item = 99",
          "UPDATE pin SET first_s = -1", "UPDATE pin SET first = second",
          "UPDATE moment_beside SET performance = 1", "UPDATE script_quote SET performance = 1",
          "UPDATE script_item SET kind = 'aside'", "INSERT INTO pin VALUES (9, 1, 2, 0.5, 2)"}) {
        Pair s;
        s.project.add_moment(s.comparing(s.b));
        s.project.add_script_item(s.stop());
        s.project.set_pins(s.a, s.b, pins({{1, 1}}));
        CHECK(s.project.check().empty());
        execute(s.file,
                std::string("PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF; ") + harm);
        INFO(harm);
        CHECK_FALSE(Project::open(s.file, Access::read).check().empty());
    }
}
