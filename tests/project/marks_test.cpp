// The coach's work on marks, and detection again without losing it.
#include "desk.h"

using namespace desk;

namespace {

std::vector<Mark> of_kind(const Sample& s, MarkKind kind, bool with_dropped = false) {
    std::vector<Mark> found = s.project.marks(s.a, with_dropped);
    std::erase_if(found, [&](const Mark& m) { return m.kind() != kind; });
    return found;
}

Mark only(const Sample& s, MarkKind kind) {
    const auto found = of_kind(s, kind);
    REQUIRE(found.size() == 1);
    return found.front();
}

struct Heard : Sample {
    Heard() { hear(); }
    void hear() { project.store_listening(a, heard); }
    marks::Analysis heard = analysis();
};

} // namespace

TEST_CASE("a mark that the coach adds is kept, is the coach's, and is certain") {
    Heard s;
    const MarkId id =
        s.project.add_mark({{}, s.a, MarkState::proposed, Origin::detected, breath(2.86, 2.95)});
    const Mark m = s.project.mark(id);
    CHECK(m.state == MarkState::kept);
    CHECK(m.origin == Origin::coach);
    CHECK(m.confidence() == Confidence{1});
    CHECK(m.span() == span(2.86, 2.95));
}

TEST_CASE("moving or changing a proposal keeps it, and a switch moves to the span's start") {
    Heard s;
    const MarkId b = only(s, MarkKind::breath).id;
    s.project.move_mark(b, span(1.1, 1.3));
    CHECK(s.project.mark(b).state == MarkState::kept);
    CHECK(s.project.mark(b).origin == Origin::detected);
    CHECK(s.project.mark(b).span() == span(1.1, 1.3));
    const MarkId w = only(s, MarkKind::register_switch).id;
    s.project.move_mark(w, span(2.2, 2.5));
    CHECK(s.project.mark(w).span() == span(2.2, 2.2));
    Mark n = of_kind(s, MarkKind::note)[0];
    std::get<marks::Note>(n.what).onset.kind = marks::OnsetKind::glottal;
    s.project.change_mark(n);
    CHECK(std::get<marks::Note>(s.project.mark(n.id).what).onset.kind == marks::OnsetKind::glottal);
    CHECK(s.project.mark(n.id).state == MarkState::kept);
}

TEST_CASE("marks that make no sense are refused") {
    Heard s;
    const MarkId b = only(s, MarkKind::breath).id;
    const auto bad = [&](auto call) { CHECK(fault_of(call) == Fault::bad_request); };
    bad([&] { s.project.move_mark(b, span(2, 2)); });
    bad([&] { s.project.move_mark(b, span(-1, 2)); });
    bad([&] { s.project.add_mark({{}, s.a, {}, {}, register_switch(-1)}); });
    bad([&] { s.project.add_mark({{}, s.a, {}, {}, register_switch(NAN)}); });
    marks::Note broken = note(1, 2);
    broken.level = Decibels(NAN);
    bad([&] { s.project.add_mark({{}, s.a, {}, {}, broken}); });
    bad([&] { s.project.change_mark({b, s.a, {}, {}, note(1, 2)}); });
    CHECK(fault_of([&] { s.project.add_mark({{}, {77}, {}, {}, breath(1, 2)}); }) == Fault::not_found);
    CHECK(fault_of([&] { s.project.set_mark_state({777}, MarkState::kept); }) == Fault::not_found);
    CHECK(s.project.marks(s.a).size() == 6);
}

TEST_CASE("a phrase is split in two, and two that follow each other are joined") {
    Heard s;
    auto phrases = of_kind(s, MarkKind::phrase);
    for (const auto& p : phrases) {
        Mark levelled = p;
        std::get<marks::Phrase>(levelled.what).level.emplace();
        std::get<marks::Phrase>(levelled.what).dynamic = marks::Dynamic::f;
        s.project.change_mark(levelled);
    }
    s.project.split_phrase(phrases[1].id, Seconds(2.1));
    phrases = of_kind(s, MarkKind::phrase);
    REQUIRE(phrases.size() == 3);
    CHECK(phrases[1].span() == span(1.6, 2.1));
    CHECK(phrases[2].span() == span(2.1, 2.85));
    CHECK(phrases[1].state == MarkState::kept);
    CHECK(phrases[2].state == MarkState::kept);
    CHECK(std::get<marks::Phrase>(phrases[0].what).level);
    for (const std::size_t part : {1, 2}) { // what was measured over the whole isn't told of a part
        CHECK_FALSE(std::get<marks::Phrase>(phrases[part].what).level);
        CHECK_FALSE(std::get<marks::Phrase>(phrases[part].what).dynamic);
    }
    CHECK(fault_of([&] { s.project.join_phrases(phrases[0].id, phrases[2].id); }) == Fault::bad_request);
    s.project.join_phrases(phrases[1].id, phrases[0].id); // in either order
    phrases = of_kind(s, MarkKind::phrase);
    REQUIRE(phrases.size() == 2);
    CHECK(phrases[0].span() == span(0.1, 2.1));
    CHECK(fault_of([&] { s.project.split_phrase(phrases[0].id, Seconds(0.1)); }) == Fault::bad_request);
    CHECK(fault_of([&] { s.project.split_phrase(phrases[0].id, Seconds(5)); }) == Fault::bad_request);
    CHECK(fault_of([&] { s.project.split_phrase(of_kind(s, MarkKind::note)[0].id, Seconds(0.5)); }) ==
          Fault::bad_request);
    CHECK(fault_of([&] { s.project.join_phrases(phrases[0].id, phrases[0].id); }) == Fault::bad_request);
}

TEST_CASE("hearing the same again changes no mark and leaves no edit behind") {
    Heard s;
    const auto before = s.project.marks(s.a);
    const auto entries = s.project.journal().size();
    s.hear();
    const auto after = s.project.marks(s.a);
    REQUIRE(after.size() == before.size());
    for (std::size_t i = 0; i < after.size(); ++i)
        CHECK(after[i].id == before[i].id);
    CHECK(s.project.journal().size() == entries);
}

TEST_CASE("detecting again replaces untouched proposals") {
    Heard s;
    s.heard.breaths = {breath(2.9, 2.99)};
    s.heard.notes.pop_back();
    s.heard.switches.clear();
    s.hear();
    CHECK(only(s, MarkKind::breath).span() == span(2.9, 2.99));
    CHECK(of_kind(s, MarkKind::note).size() == 1);
    CHECK(of_kind(s, MarkKind::register_switch).empty());
}

TEST_CASE("a kept mark stays as it is, and a new proposal that means the same is left out") {
    Heard s;
    const MarkId id = only(s, MarkKind::breath).id;
    s.project.set_mark_state(id, MarkState::kept);
    s.heard.breaths = {breath(1.05, 1.5)};
    s.hear();
    CHECK(only(s, MarkKind::breath).id == id);
    CHECK(only(s, MarkKind::breath).span() == span(1.0, 1.4));
    s.heard.breaths = {breath(1.5, 1.8)}; // elsewhere: another breath
    s.hear();
    CHECK(of_kind(s, MarkKind::breath).size() == 2);
    s.heard.breaths.clear(); // not heard any more: the coach's word stands
    s.hear();
    CHECK(only(s, MarkKind::breath).id == id);
}

TEST_CASE("a dropped mark doesn't come back, but a long one that was dropped allows better ones inside it") {
    Heard s;
    s.project.set_mark_state(only(s, MarkKind::breath).id, MarkState::dropped);
    s.heard.breaths = {breath(1.02, 1.35)};
    s.hear();
    CHECK(of_kind(s, MarkKind::breath).empty());
    CHECK(of_kind(s, MarkKind::breath, true).size() == 1);

    s.heard.phrases = {phrase(0, 3)};
    s.hear();
    s.project.set_mark_state(only(s, MarkKind::phrase).id, MarkState::dropped);
    s.heard.phrases = {phrase(0, 1.2), phrase(1.5, 2.9)};
    s.hear();
    CHECK(of_kind(s, MarkKind::phrase).size() == 2);
    s.heard.phrases = {phrase(0.1, 2.9)};
    s.hear();
    CHECK(of_kind(s, MarkKind::phrase).empty());
}

TEST_CASE("a moved mark stands for where it is and for where it was found") {
    Heard s;
    const MarkId id = only(s, MarkKind::breath).id;
    s.project.move_mark(id, span(2.86, 2.98));
    s.hear(); // found at 1.0 once more
    CHECK(only(s, MarkKind::breath).id == id);
    CHECK(only(s, MarkKind::breath).span() == span(2.86, 2.98));
    const MarkId w = only(s, MarkKind::register_switch).id;
    s.project.move_mark(w, span(0.5, 0.5));
    s.heard.switches = {register_switch(2.1)};
    s.hear();
    CHECK(only(s, MarkKind::register_switch).id == w);
    s.heard.switches = {register_switch(2.3)}; // farther than 0.15 s from both
    s.hear();
    CHECK(of_kind(s, MarkKind::register_switch).size() == 2);
}

TEST_CASE("marks that the coach added stay, and keep like proposals of the same kind away") {
    Heard s;
    const MarkId id = s.project.add_mark({{}, s.a, {}, {}, breath(2.0, 2.2)});
    s.heard.breaths = {breath(2.05, 2.25)};
    s.heard.notes.push_back(note(2.0, 2.2));
    s.hear();
    CHECK(only(s, MarkKind::breath).id == id);
    CHECK(of_kind(s, MarkKind::note).size() == 3); // another kind isn't the same thing
}

TEST_CASE("phrases that the coach split or joined aren't proposed again as they were") {
    Heard s;
    auto phrases = of_kind(s, MarkKind::phrase);
    s.project.split_phrase(phrases[0].id, Seconds(0.5));
    s.hear();
    CHECK(of_kind(s, MarkKind::phrase).size() == 3);
    phrases = of_kind(s, MarkKind::phrase);
    s.project.join_phrases(phrases[1].id, phrases[2].id);
    s.hear();
    phrases = of_kind(s, MarkKind::phrase);
    REQUIRE(phrases.size() == 2);
    CHECK(phrases[0].span() == span(0.1, 0.5));
    CHECK(phrases[1].span() == span(0.5, 2.85));
}

TEST_CASE("detecting again is one edit: taken back, the old proposals are there again") {
    Heard s;
    const auto before = s.project.marks(s.a);
    s.heard.breaths = {breath(2.9, 2.99)};
    s.heard.phrases.clear();
    s.hear();
    CHECK(s.project.undo() == "listen to 'A'");
    const auto after = s.project.marks(s.a);
    REQUIRE(after.size() == before.size());
    for (std::size_t i = 0; i < after.size(); ++i)
        CHECK(after[i].id == before[i].id);
}

TEST_CASE("another performance's marks aren't touched by detection") {
    Heard s;
    const PerformanceId b = s.add("b.wav", "B");
    s.project.store_listening(b, analysis());
    s.heard = {};
    s.heard.tuning = Hertz(440);
    s.hear();
    CHECK(s.project.marks(s.a).empty());
    CHECK(s.project.marks(b).size() == 6);
}
