// Two performances below each other: what stands between the lines, and what lies under the pointer.
#include "sheet/measures.h"
#include "sheet/pair_hit.h"
#include "sheet/pair_material.h"
#include "sheet/pair_words.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::sheet;
using test::Pair;

namespace {

PairView view(double per_second) {
    PairView v;
    v.per_second = per_second;
    return v;
}

} // namespace

TEST_CASE("Only counterparts that stand elsewhere are tied") {
    Pair pair;
    CHECK(PairLayout(pair.source(), view(60)).ties().empty());
    int moved = 0;
    for (auto& mark : pair.b.marks)
        if (auto* note = std::get_if<marks::Note>(&mark.what); note && ++moved == 3)
            note->span.start += Seconds(0.2);
    pair.find();
    const PairLayout layout(pair.source(), view(60));
    REQUIRE(layout.ties().size() == 1);
    CHECK(layout.ties()[0].b.x - layout.ties()[0].a.x == Approx(0.2 * test::kFaster * 60));
}

TEST_CASE("Notes that only one sings inside a common line are known as added") {
    Pair pair;
    CHECK(PairLayout(pair.source(), view(60)).added().empty());
    int seen = 0;
    std::erase_if(pair.a.marks,
                  [&](const auto& m) { return m.kind() == project::MarkKind::note && ++seen == 4; });
    pair.find();
    const PairLayout layout(pair.source(), view(60));
    REQUIRE(layout.added().size() == 1);
    CHECK(layout.added()[0].which == Which::b);
    CHECK(layout.added()[0].row == 0);
}

TEST_CASE("Differences stand where they are, numbered in order, none on another; those of the whole stand "
          "over all") {
    Pair pair;
    pair.differences.push_back(
        {compare::DifferenceKind::key, {}, {}, 4, compare::Unit::semitones, 0.1, {0.9}, "B sings higher."});
    for (const std::size_t n : {1U, 2U, 2U, 3U, 9U, 20U})
        pair.add_difference(n, compare::DifferenceKind::breath_saved);
    const PairLayout layout(pair.source(), view(60));
    REQUIRE(layout.signs().size() == 6);
    REQUIRE(layout.head().size() == 2);
    CHECK(layout.head()[0].find("4 semitones lower") != std::string::npos);
    CHECK(layout.head()[1].find("key 4 semitones higher") != std::string::npos);
    for (std::size_t i = 0; i < 6; ++i) {
        const PairSign& sign = layout.signs()[i];
        const PlacedPair& place = layout.places()[sign.row];
        CHECK(sign.difference == i + 1);
        CHECK(sign.number == static_cast<int>(i) + 1);
        CHECK(sign.left == Approx(layout.x_of(sign.row, Which::a, sign.a->start)));
        CHECK(sign.top >= place.words_a.value_or(place.a.bottom));
        CHECK(sign.top + kSignLane <= place.b.top - kAbove + 1);
        for (std::size_t k = 0; k < i; ++k) {
            const PairSign& other = layout.signs()[k];
            const bool beside = sign.row != other.row || sign.top != other.top ||
                                sign.left >= other.left + other.width || other.left >= sign.left + sign.width;
            CHECK(beside);
        }
    }
}

TEST_CASE("The pointer finds signs, the own time of either line, and nothing where nobody sings") {
    Pair pair;
    pair.add_difference(9, compare::DifferenceKind::breath_saved);
    const PairLayout layout(pair.source(), view(60));
    const PairSign& sign = layout.signs().at(0);
    const PlacedPair& place = layout.places()[sign.row];
    const auto at = pair_hit(layout, sign.left + 5, place.top + sign.top + 8);
    REQUIRE(std::holds_alternative<SignHit>(at));
    CHECK(std::get<SignHit>(at).difference == 0);
    for (const Which which : kBoth) {
        const Staff& staff = layout.staff(sign.row, which);
        const auto line = pair_hit(layout, layout.origin() + 90, place.top + (staff.top + staff.bottom) / 2);
        REQUIRE(std::holds_alternative<LineHit>(line));
        const LineHit hit = std::get<LineHit>(line);
        CHECK(hit.which == which);
        const Seconds begin = layout.rows()[sign.row].part(which).sung.start;
        CHECK((hit.time - begin).value() == Approx(which == Which::a ? 1.5 : 1.5 / test::kFaster));
    }
    const PlacedPair& lacking = layout.places()[2];
    CHECK(std::holds_alternative<std::monostate>(pair_hit(layout, 300, lacking.top + lacking.b.top + 5)));
    CHECK(std::holds_alternative<std::monostate>(pair_hit(layout, 300, 5)));
    CHECK(std::holds_alternative<std::monostate>(pair_hit(layout, 300, layout.height() + 5)));
}

TEST_CASE("Short words turn round with the sign of a difference") {
    const auto words = [](compare::DifferenceKind kind, double size, compare::Unit unit) {
        return short_words({kind, Span{}, Span{}, size, unit, 0.1, {0.9}, ""});
    };
    using enum compare::DifferenceKind;
    CHECK(words(note_intonation, 37.4, compare::Unit::cents) == "37 cents higher");
    CHECK(words(note_intonation, -37.4, compare::Unit::cents) == "37 cents lower");
    CHECK(words(key, -1, compare::Unit::semitones) == "key 1 semitone lower");
    CHECK(words(vibrato, 40, compare::Unit::cents) == "with vibrato");
    CHECK(words(vibrato, -40, compare::Unit::cents) == "without vibrato");
    CHECK(words(added_notes, 1, compare::Unit::times) == "1 note more");
    CHECK(words(added_notes, -3, compare::Unit::times) == "3 notes fewer");
    CHECK(words(vibrato_rate, -0.84, compare::Unit::hertz) == "vibrato 0.8 Hz slower");
    CHECK(words(level_shape, -6.2, compare::Unit::decibels) == "line fades 6 dB more");
}
