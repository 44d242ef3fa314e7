// After an edit the session reads only what has changed: it must hold what reading everything would give.
#include "desk.h"
#include "desk/work/edits.h"
#include "profile/gather.h"
#include "project/mark_rows.h"

#include <catch2/catch.hpp>

#include <random>
#include <sstream>

using namespace luft;
using namespace luft::desk;

namespace {

/// Everything that an edit can change, as text.
std::string told(const profile::Source& source) {
    std::ostringstream out;
    for (const auto& m : source.marks)
        out << m.id.value << ' ' << m.performance.value << ' ' << static_cast<int>(m.state) << ' '
            << static_cast<int>(m.origin) << ' ' << project::same_words(m) << '\n';
    for (const auto& m : source.moments) {
        out << m.id.value << ' ' << m.span.start.value() << ' ' << m.span.end.value() << ' '
            << static_cast<int>(m.state) << ' ' << static_cast<int>(m.verdict) << ' ' << m.remark;
        for (const auto& tag : m.shades)
            out << ' ' << vocabulary::tag_text(tag);
        out << '\n';
    }
    for (const auto& w : source.sung_words)
        out << w.id.value << ' ' << w.text << ' ' << w.at.value() << ' ' << w.placed << '\n';
    for (const Seconds stop : source.stops)
        out << stop.value() << ' ';
    for (const auto& facet : source.vocabulary.facets)
        out << facet.key << facet.shades.size() << ' ';
    out << source.piece.title << source.piece.words << source.performance.performer;
    return out.str();
}

std::string read_anew(const Session& session) {
    return told(profile::gather(session.project(), session.performances().front()));
}

void edit_by_chance(Session& session, std::mt19937& random) {
    const auto any = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
    const auto& marks = session.source().marks;
    const auto& moments = session.source().moments;
    const Seconds at(0.3 + 0.01 * static_cast<double>(any(500)));
    switch (any(12)) {
    case 0:
        return set_breath(session, at);
    case 1:
        return make_moment(session, {at, at + Seconds(0.7)});
    case 2:
        return make_stop(session, at);
    case 3:
        return set_switch(session, at);
    case 4:
        if (marks.empty()) return;
        return session.select(marks[any(marks.size())].id), set_state(session, project::MarkState::dropped);
    case 5:
        if (marks.empty()) return;
        return session.select(marks[any(marks.size())].id), set_state(session, project::MarkState::kept);
    case 6: {
        if (marks.empty()) return;
        const auto& mark = marks[any(marks.size())];
        const Seconds start = mark.kind() == project::MarkKind::register_switch ? at : mark.span().start;
        return move_mark(session, mark.id, {at, start == at ? at : at + Seconds(0.2)});
    }
    case 7:
        if (moments.empty()) return;
        return session.select(moments[any(moments.size())].id), set_verdict(session, project::Verdict::watch);
    case 8:
        return session.undo();
    case 9:
        return session.redo();
    case 10:
        return session.edit([&](project::Project& p) {
            p.set_piece({"Ferry Song " + std::to_string(any(3)), {}, {}, {}, "one two three"});
            p.set_sung_words(*session.shown(), {{{}, *session.shown(), "one", false, at, true}});
        });
    default:
        return session.edit([&](project::Project& p) {
            p.add_facet(
                {"own-" + std::to_string(random()), "Own", "Mine.", vocabulary::Basis::coach, {}, true});
        });
    }
}

} // namespace

TEST_CASE("Whatever is edited, undone or redone, the session holds what reading everything anew gives") {
    const auto seed = GENERATE(1U, 2U, 3U);
    INFO("seed " << seed);
    std::mt19937 random(seed);
    Desk desk;
    for (int i = 0; i < 120; ++i) {
        try {
            edit_by_chance(desk.session, random);
        } catch (const Error&) { // some make no sense: then nothing has changed
        }
        INFO("edit " << i);
        REQUIRE(told(desk.session.source()) == read_anew(desk.session));
    }
}

TEST_CASE("An edit of another program is seen together with the session's own next one") {
    Desk desk;
    const auto mark = desk.session.source().marks.front().id;
    auto other = project::Project::open(desk.file());
    other.set_mark_state(mark, project::MarkState::dropped);
    other.add_moment({.id = {},
                      .performance = *desk.session.shown(),
                      .span = {Seconds(1), Seconds(2)},
                      .remark = "from elsewhere",
                      .evidence = {},
                      .shades = {},
                      .drill = {}});
    set_breath(desk.session, Seconds(4));
    CHECK(told(desk.session.source()) == read_anew(desk.session));
    CHECK_FALSE(desk.session.mark(mark));
    CHECK(desk.session.source().moments.size() == 1);
}
