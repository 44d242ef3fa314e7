// Differences put into one of two performances whose every note is known.
#include "compare/alike.h"
#include "compare/ear_errors.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

using enum DifferenceKind;

void silence(Side& side, Span span) {
    for (auto f = nearest_frame(span.start).value; f < nearest_frame(span.end).value; ++f)
        side.f0.set(static_cast<std::size_t>(f), std::nullopt);
}

/// A breath at the end of a note, which becomes shorter.
Span breathe(Side& side, std::size_t after) {
    const Seconds end = side.notes[after].span.end;
    const Span breath{end - Seconds(0.28), end};
    silence(side, breath);
    side.notes[after].span.end = breath.start;
    side.breaths.push_back({breath, marks::BreathEvidence::heard, true, {}, {0.95}, ""});
    std::ranges::sort(side.breaths, {}, [](const marks::Breath& b) { return b.span.start; });
    return breath;
}

/// The first note of B's phrase that is as long as that and isn't its first or last one.
std::size_t inner_note(const Side& side, std::size_t phrase, Seconds least) {
    std::vector<std::size_t> in;
    for (std::size_t i = 0; i < side.notes.size(); ++i)
        if (side.phrases[phrase].span.contains(side.notes[i].span.middle())) in.push_back(i);
    for (std::size_t k = 1; k + 2 < in.size(); ++k)
        if (side.notes[in[k]].span.length() >= least) return in[k];
    throw std::logic_error("the piece has no such note");
}

/// Two notes of a phrase, neither its first nor its last one, that end 0.8 s apart and more.
std::pair<std::size_t, std::size_t> two_inner_notes(const Side& side) {
    for (const marks::Phrase& phrase : side.phrases) {
        std::vector<std::size_t> in;
        for (std::size_t i = 0; i < side.notes.size(); ++i)
            if (phrase.span.contains(side.notes[i].span.middle()) &&
                side.notes[i].span.length() > Seconds(0.4))
                in.push_back(i);
        for (std::size_t k = 0; k + 2 < in.size(); ++k) // the last one is long
            if (side.notes[in[k]].span.end > phrase.span.start + Seconds(1) &&
                side.notes[in[k + 1]].span.end - side.notes[in[k]].span.end > Seconds(0.8))
                return {in[k], in[k + 1]};
    }
    throw std::logic_error("the piece has no such notes");
}

} // namespace

TEST_CASE("identical singing in another key and tempo differs in key and tempo only") {
    for (const std::uint64_t seed : {521, 522, 523, 524}) {
        const auto all = Alike(seed).differences();
        for (const Difference& d : all)
            UNSCOPED_INFO(name_of(d.kind) << " " << d.size << ": " << d.sentence);
        REQUIRE(all.size() == 2);
        CHECK(all[0].kind == key);
        CHECK(all[0].size == 4);
        CHECK(all[1].kind == tempo);
        CHECK(all[1].size == Approx(-10).margin(1));
        CHECK_FALSE(all[0].a);
    }
}

TEST_CASE("breaths that one adds, saves or takes elsewhere are told") {
    Alike added(526);
    check_one(added, breath_added, 1, breathe(added.b, inner_note(added.b, 1, Seconds(0.4))));
    Alike saved(526);
    const std::size_t at = inner_note(saved.a, 1, Seconds(0.4));
    breathe(saved.a, at);
    check_one(saved, breath_saved, -1, saved.b.phrases[1].span);
    Alike moved(526);
    const auto [first, other] = two_inner_notes(moved.a);
    breathe(moved.a, first);
    check_one(moved, breath_moved, 1, breathe(moved.b, other));
}

TEST_CASE("a breath of both, or one that a pause may hide, is no difference") {
    Alike same(526);
    breathe(same.a, inner_note(same.a, 1, Seconds(0.5)));
    breathe(same.b, inner_note(same.b, 1, Seconds(0.5)));
    CHECK(beside_key(same).empty());
    same.a.breaths.clear(); // the pause is still there
    CHECK(beside_key(same).empty());
}

TEST_CASE("a phrase that one breaks, or joins with the next, is told") {
    Alike broken(527);
    const std::size_t after = inner_note(broken.b, 1, Seconds(0.5));
    const Span pause = breathe(broken.b, after);
    broken.b.breaths.clear();
    marks::Phrase rest = broken.b.phrases[1];
    rest.span.start = pause.end;
    broken.b.phrases[1].span.end = pause.start;
    broken.b.phrases.insert(broken.b.phrases.begin() + 2, rest);
    check_one(broken, phrase_broken, 1, pause);
    std::swap(broken.a, broken.b);
    const auto all = broken.differences();
    CHECK(std::ranges::count(all, phrase_joined, &Difference::kind) == 1);
}

TEST_CASE("register, onset, offset, pitch and level of the same notes are told") {
    Alike registers(528);
    for (const std::size_t i : {10, 11, 12})
        registers.b.notes[i].sung_in = marks::Register::head;
    check_one(registers, other_register, 3, registers.b.notes[11].span);

    Alike begun(528);
    begun.b.notes[7].onset.kind = marks::OnsetKind::glottal;
    check_one(begun, onset, 1, begun.b.notes[7].span);
    begun.b.notes[7].onset.confidence = {0.6}; // not sure of it
    CHECK(beside_key(begun).empty());

    Alike ended(528);
    ended.b.notes[7].offset.kind = marks::OffsetKind::breathy;
    check_one(ended, offset, 1, ended.b.notes[7].span);

    Alike sharp(528);
    sharp.b.notes[9].pitch += MidiPitch(0.3);
    check_one(sharp, note_intonation, 30, sharp.b.notes[9].span);
    sharp.b.setting = voice::Setting::accompanied;
    sharp.b.notes[9].pitch -= MidiPitch(0.17); // 13 cents, under three times the error there
    CHECK(beside_key(sharp).empty());

    Alike grown(528);
    const std::size_t held = held_note(grown.b);
    grown.b.notes[held].level_change = Decibels(11);
    check_one(grown, note_level, 11, grown.b.notes[held].span);

    Alike shaped(528);
    const Span line = shaped.b.phrases[3].span;
    for (marks::Note& n : shaped.b.notes)
        if (line.contains(n.span.middle()))
            n.level += Decibels(9) * ((n.span.middle() - line.start) / line.length());
    check_one(shaped, level_shape, 9, line);

    Alike low(528);
    for (marks::Note& n : low.b.notes)
        if (line.contains(n.span.middle())) n.pitch -= MidiPitch(0.13);
    check_one(low, phrase_intonation, -13, line);
}

TEST_CASE("vibrato of one, or faster and wider, is told") {
    Alike one(529);
    const std::size_t held = held_note(one.b);
    one.b.notes[held].vibrato = {Hertz(5.5), Cents(60), 0.9};
    CHECK(beside_key(one).empty()); // the other curve swings as well
    const Span straight = one.a.notes[held].span;
    for (auto f = nearest_frame(straight.start).value; f < nearest_frame(straight.end).value; ++f)
        one.a.f0.set(static_cast<std::size_t>(f), frequency_of(one.a.notes[held].pitch));
    check_one(one, vibrato, 60, one.b.notes[held].span);
    one.a.notes[held].vibrato = {Hertz(5.5), Cents(60), 0.9};
    one.b.notes[held].vibrato->extent = Cents(120);
    check_one(one, vibrato_extent, 60, one.b.notes[held].span);
    one.b.notes[held].vibrato = {Hertz(6.5), Cents(60), 0.9};
    check_one(one, vibrato_rate, 1, one.b.notes[held].span);
}

TEST_CASE("turns, another tuning, another tempo of a phrase and another range are told") {
    const Score score = random_score(530, 3);
    const Side plain = perform(score, {}).side;
    const auto told = [&](const Side& b, DifferenceKind kind) {
        const Alignment alignment = align(plain, b);
        auto all = find_differences(plain, b, alignment, find_counterparts(plain, b, alignment));
        std::erase_if(all, [kind](const Difference& d) { return d.kind != kind; });
        return all;
    };
    Manner manner{.seed = 2, .ornaments = 0.5};
    CHECK(told(perform(score, manner).side, added_notes).size() >= 5);
    manner = {.seed = 2, .tuning = Cents(-30)};
    REQUIRE(told(perform(score, manner).side, tuning).size() == 1);
    CHECK(told(perform(score, manner).side, tuning)[0].size == Approx(-30).margin(3));
    manner = {.seed = 2, .rubato = 0.25};
    CHECK(told(perform(score, manner).side, phrase_tempo).size() >= 3);
    CHECK(told(perform(score, {.seed = 2}).side, phrase_tempo).empty());
    Score higher = score; // the last phrase ends an octave and a half over the rest
    higher.sections.back().back().notes.back().pitch = 80;
    const auto other = told(perform(higher, {.seed = 2}).side, other_note);
    const auto highest = told(perform(higher, {.seed = 2}).side, highest_note);
    CHECK(other.size() == 1);
    CHECK(highest.size() == 1);
    for (const Difference& d : highest)
        CHECK(d.size > 3);
}

TEST_CASE("the rules for sizes and for counts are what they say") {
    CHECK_FALSE(beyond_error(2.9, 1, 0));
    CHECK(beyond_error(3.1, 1, 0));
    CHECK_FALSE(beyond_error(-3.1, 1, 4));
    CHECK(beyond_error(-3, 1, 0)->value ==
          Approx(0.9973).margin(0.0001)); // tables of the normal distribution
    CHECK(by_chance(8, 10, 0.5) == Approx(56.0 / 1024));
    CHECK(sign_test(0, 8) == Approx(2.0 / 256));
    CHECK(sign_test(3, 3) == 1);
}
