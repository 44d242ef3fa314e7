// What is reported of a script that doesn't fit, and where it would.
#include "script/cue_sheet.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::script;
using namespace luft::script::testing;
using project::ScriptItemKind;

namespace {

std::vector<Warning> of_kind(const CueSheet& sheet, WarningKind kind) {
    std::vector<Warning> out;
    for (const Warning& w : sheet.warnings)
        if (w.kind == kind) out.push_back(w);
    return out;
}

} // namespace

TEST_CASE("an aside in a rest is laid at its media time and passes without a warning") {
    const CueSheet sheet = lay_out(with(
        {item(1, ScriptItemKind::opening, 0, words(25)), item(2, ScriptItemKind::aside, 26, words(10))}));
    REQUIRE(sheet.asides.size() == 1);
    CHECK(sheet.asides[0].programme_start == Rational(36));
    CHECK(sheet.asides[0].programme_end == Rational(40));
    CHECK(sheet.warnings.empty());
    CHECK(sheet.longest_quote == Rational(30)); // after the aside, from 30 to 60 s
}

TEST_CASE("an aside on singing is reported with the nearest rest that is long enough") {
    // 5 words last 2 s; the rest from 12 to 15 s holds them, the nearest start to 11.5 is 12.
    const auto near = of_kind(lay_out(with({item(1, ScriptItemKind::aside, 11.5, words(5))})),
                              WarningKind::aside_on_singing);
    REQUIRE(near.size() == 1);
    REQUIRE(near[0].remedy);
    CHECK(near[0].remedy->value() == Approx(12));
    // 15 words last 6 s: only 24 to 34 s holds them (44 to 60 s is farther away).
    const auto longer = of_kind(lay_out(with({item(1, ScriptItemKind::aside, 11.5, words(15))})),
                                WarningKind::aside_on_singing);
    REQUIRE(longer.size() == 1);
    REQUIRE(longer[0].remedy);
    CHECK(longer[0].remedy->value() == Approx(24));
    // The place that was named is free of warnings.
    CHECK(lay_out(with({item(1, ScriptItemKind::aside, 24, words(15))})).warnings.empty());
}

TEST_CASE("an aside that fits nowhere says so") {
    // 50 words last 20 s; no rest is that long.
    const auto w = of_kind(lay_out(with({item(1, ScriptItemKind::aside, 20, words(50))})),
                           WarningKind::aside_on_singing);
    REQUIRE(w.size() == 1);
    CHECK_FALSE(w[0].remedy);
}

TEST_CASE("an aside is cut off by a halt and by the next aside, and ends there") {
    const CueSheet by_stop = lay_out(
        with({item(1, ScriptItemKind::aside, 26, words(10)), item(2, ScriptItemKind::stop, 28, words(5))}));
    CHECK(of_kind(by_stop, WarningKind::aside_cut_off).size() == 1);
    REQUIRE(by_stop.asides.size() == 1);
    CHECK(by_stop.asides[0].programme_end == Rational(28));
    const CueSheet by_aside = lay_out(
        with({item(1, ScriptItemKind::aside, 26, words(10)), item(2, ScriptItemKind::aside, 29, words(5))}));
    CHECK(of_kind(by_aside, WarningKind::aside_cut_off).size() == 1);
    REQUIRE(by_aside.asides.size() == 2);
    CHECK(by_aside.asides[0].programme_end == by_aside.asides[1].programme_start);
}

TEST_CASE("a stop inside a sung note is reported with the nearest phrase end") {
    const auto w =
        of_kind(lay_out(with({item(1, ScriptItemKind::stop, 22, words(5))})), WarningKind::stop_in_note);
    REQUIRE(w.size() == 1);
    REQUIRE(w[0].remedy);
    CHECK(w[0].remedy->value() == Approx(24));
    CHECK(of_kind(lay_out(with({item(1, ScriptItemKind::stop, 24, words(5))})), WarningKind::stop_in_note)
              .empty());
    CHECK(of_kind(lay_out(with({item(1, ScriptItemKind::stop, 13, words(5))})), WarningKind::stop_in_note)
              .empty());
}

TEST_CASE("two stops closer than the set distance are reported at the second one") {
    Source source =
        with({item(1, ScriptItemKind::stop, 24, words(5)), item(2, ScriptItemKind::stop, 30, words(5))});
    const auto w = of_kind(lay_out(source), WarningKind::stops_too_close);
    REQUIRE(w.size() == 1);
    CHECK(w[0].item == project::ScriptItemId{2});
    source.settings.least_between_stops = Seconds(6);
    CHECK(of_kind(lay_out(source), WarningKind::stops_too_close).empty());
}

TEST_CASE("too long a quote is reported with a phrase end inside it") {
    Source source = with({});
    source.settings.longest_quote = Seconds(30);
    const auto w = of_kind(lay_out(source), WarningKind::quote_too_long);
    REQUIRE(w.size() == 1); // 60 s without a word; half of it lies at 30 s
    REQUIRE(w[0].remedy);
    CHECK(w[0].remedy->value() == Approx(24));
    // With a stop there, what follows is 36 s long and names the next place.
    source.items = {item(1, ScriptItemKind::stop, 24, words(5))};
    const auto next = of_kind(lay_out(source), WarningKind::quote_too_long);
    REQUIRE(next.size() == 1);
    REQUIRE(next[0].remedy);
    CHECK(next[0].remedy->value() == Approx(44));
    source.items.push_back(item(2, ScriptItemKind::stop, 44, words(5)));
    CHECK(of_kind(lay_out(source), WarningKind::quote_too_long).empty());
}

TEST_CASE("a halt without words doesn't break a quote") {
    Source source = with({item(1, ScriptItemKind::stop, 24, "")});
    source.settings.longest_quote = Seconds(30);
    const CueSheet sheet = lay_out(source);
    CHECK(sheet.longest_quote == Rational(60));
    CHECK(of_kind(sheet, WarningKind::quote_too_long).size() == 1);
}

TEST_CASE("too large a share is reported only where a share is set") {
    Source source = with({});
    CHECK(of_kind(lay_out(source), WarningKind::share_too_large).empty());
    source.settings.most_quoted_share = 0.5;
    CHECK(of_kind(lay_out(source), WarningKind::share_too_large).size() == 1);
    source.items = {item(1, ScriptItemKind::closing, 30, words(5))};
    CHECK(of_kind(lay_out(source), WarningKind::share_too_large).empty());
}

TEST_CASE("stops and asides outside the recording are reported") {
    const CueSheet sheet = lay_out(
        with({item(1, ScriptItemKind::stop, 75, words(5)), item(2, ScriptItemKind::aside, 80, words(5)),
              item(3, ScriptItemKind::stop, -2, words(5))}));
    CHECK(of_kind(sheet, WarningKind::stop_outside).size() == 3);
    CHECK(sheet.asides.empty());
    CHECK(sheet.segments.front().media_start == Rational(0));
    CHECK(sheet.segments.back().media_start == Rational(60));
    CHECK(of_kind(lay_out(with({item(1, ScriptItemKind::stop, 60, words(5))})), WarningKind::stop_outside)
              .empty());
}

TEST_CASE("dropped marks and unsure proposals are no singing") {
    Source source = with({item(1, ScriptItemKind::stop, 22, words(5))});
    for (auto& mark : source.marks)
        if (auto* n = std::get_if<marks::Note>(&mark.what)) n->confidence = {0.3};
    CHECK(of_kind(lay_out(source), WarningKind::stop_in_note).empty());
    for (auto& mark : source.marks)
        mark.state = project::MarkState::kept;
    CHECK(of_kind(lay_out(source), WarningKind::stop_in_note).size() == 1);
}
