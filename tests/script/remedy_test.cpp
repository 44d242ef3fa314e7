// What is offered against a warning makes it go.
#include "script/figures.h"
#include "script/remedy.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace luft;
using namespace luft::script;
using namespace luft::script::testing;
using project::ScriptItem;
using project::ScriptItemKind;

namespace {

/// The source with a remedy's items in it.
Source mended(Source source, const Remedy& remedy) {
    std::int64_t next = 1000;
    for (ScriptItem item : remedy.items) {
        if (item.id.value == 0) item.id = {next++};
        const auto old = std::ranges::find(source.items, item.id, &ScriptItem::id);
        if (old == source.items.end())
            source.items.push_back(item);
        else
            *old = item;
    }
    return source;
}

Warning only(const CueSheet& sheet, WarningKind kind) {
    std::vector<Warning> found;
    for (const Warning& w : sheet.warnings)
        if (w.kind == kind) found.push_back(w);
    REQUIRE(found.size() == 1);
    return found.front();
}

/// Applies what helps against the one warning of that kind; the script after it.
Source helped(const Source& source, WarningKind kind) {
    const CueSheet sheet = lay_out(source);
    const auto remedy = remedy_for(source, sheet, only(sheet, kind));
    REQUIRE(remedy);
    INFO(remedy->words);
    return mended(source, *remedy);
}

} // namespace

TEST_CASE("a stop inside a note moves to the nearest phrase end") {
    const Source after =
        helped(with({item(1, ScriptItemKind::stop, 10.5, words(5))}), WarningKind::stop_in_note);
    CHECK(after.items[0].at == Seconds(12));
    CHECK(lay_out(after).warnings.empty());
}

TEST_CASE("an aside on singing moves into the nearest rest that it fits") {
    const Source after =
        helped(with({item(1, ScriptItemKind::aside, 11.5, words(15))}), WarningKind::aside_on_singing);
    CHECK(after.items[0].at == Seconds(24));
    CHECK(after.items[0].kind == ScriptItemKind::aside);
    CHECK(lay_out(after).warnings.empty());
}

TEST_CASE("an aside too long for every rest becomes a stop at the end of its phrase") {
    const Source after =
        helped(with({item(1, ScriptItemKind::aside, 20, words(50))}), WarningKind::aside_on_singing);
    CHECK(after.items[0].kind == ScriptItemKind::stop);
    CHECK(after.items[0].at == Seconds(24));
    CHECK(lay_out(after).warnings.empty());
}

TEST_CASE("an aside that a halt cuts off moves to where it can be said") {
    const Source after = helped(
        with({item(1, ScriptItemKind::aside, 26, words(10)), item(2, ScriptItemKind::stop, 28, words(5))}),
        WarningKind::aside_cut_off);
    CHECK(after.items[0].at == Seconds(24)); // 4 s of words end as playback halts
    CHECK(lay_out(after).warnings.empty());
}

TEST_CASE("a stop too close to the last one moves on to a phrase end, or the two talk at one halt") {
    const Source later = helped(
        with({item(1, ScriptItemKind::stop, 12, words(5)), item(2, ScriptItemKind::stop, 15, words(5))}),
        WarningKind::stops_too_close);
    CHECK(later.items[1].at == Seconds(24));
    CHECK(lay_out(later).warnings.empty());
    const Source joined = helped(
        with({item(1, ScriptItemKind::stop, 24, words(5)), item(2, ScriptItemKind::stop, 29, words(5))}),
        WarningKind::stops_too_close);
    CHECK(joined.items[0].at == Seconds(29));
    CHECK(lay_out(joined).warnings.empty());
}

TEST_CASE("a stop that an earlier one skips gets its music back") {
    std::vector<ScriptItem> items = {item(1, ScriptItemKind::stop, 12, words(5)),
                                     item(2, ScriptItemKind::stop, 24, words(5))};
    items[0].resume = Seconds(33.5);
    const Source after = helped(with(items), WarningKind::stop_outside);
    CHECK(after.items[0].resume == Seconds(14.5)); // half a second before the phrase that ends at 24 s
    CHECK(lay_out(after).warnings.empty());
}

TEST_CASE("a quote before a halt is shortened at its beginning, so that the halted phrase stays") {
    Source source =
        with({item(1, ScriptItemKind::opening, 0, words(5)), item(2, ScriptItemKind::stop, 44, words(5)),
              item(3, ScriptItemKind::closing, 45, words(5))});
    source.settings.longest_quote = Seconds(30);
    const Source after = helped(source, WarningKind::quote_too_long);
    CHECK(after.items[0].resume == Seconds(14.5));
    const CueSheet sheet = lay_out(after);
    CHECK(sheet.warnings.empty());
    CHECK(sheet.longest_quote == Rational(44) - Rational(363, 25)); // from the frame next to 14.5 s
}

TEST_CASE("a quote at the recording's end stops at a phrase end") {
    Source source = with({item(1, ScriptItemKind::stop, 12, words(5))});
    source.settings.longest_quote = Seconds(33);
    const Source after = helped(source, WarningKind::quote_too_long);
    CHECK(after.items.back().kind == ScriptItemKind::closing);
    CHECK(after.items.back().at == Seconds(44));
    CHECK(lay_out(after).warnings.empty());
}

TEST_CASE("without an opening, the music of the first quote still can begin later") {
    Source source = with({item(1, ScriptItemKind::stop, 44, words(5))});
    source.settings.longest_quote = Seconds(16);
    source.items.push_back(item(2, ScriptItemKind::closing, 44, words(5)));
    const Source after = helped(source, WarningKind::quote_too_long);
    CHECK(after.items.back().kind == ScriptItemKind::opening);
    CHECK(after.items.back().resume == Seconds(33.5));
    CHECK(lay_out(after).longest_quote == Rational(44) - Rational(838, 25)); // the frame next to 33.5 s
}

TEST_CASE("a quote between an aside and a halt takes a halt for words, since nothing can be left out") {
    Source source =
        with({item(1, ScriptItemKind::opening, 0, words(5)), item(2, ScriptItemKind::aside, 1, words(5)),
              item(3, ScriptItemKind::stop, 44, words(5)), item(4, ScriptItemKind::closing, 44, words(5))});
    source.settings.longest_quote = Seconds(30);
    const Source after = helped(source, WarningKind::quote_too_long);
    CHECK(after.items.back().kind == ScriptItemKind::stop);
    CHECK(after.items.back().at == Seconds(24));
    // It waits for its words now, and no other is added: music can be left out after it.
    const CueSheet sheet = lay_out(after);
    const auto next = remedy_for(after, sheet, only(sheet, WarningKind::quote_too_long));
    REQUIRE(next);
    CHECK(next->items[0].id == after.items.back().id);
    CHECK(next->items[0].resume == Seconds(33.5));
}

TEST_CASE("a share too large falls with every step until it is kept or nothing can be left out") {
    Source source =
        with({item(1, ScriptItemKind::opening, 0, words(5)), item(2, ScriptItemKind::stop, 24, words(5)),
              item(3, ScriptItemKind::stop, 44, words(5))});
    source.settings.most_quoted_share = 0.5;
    int steps = 0;
    for (CueSheet sheet = lay_out(source); sheet.quoted_share > 0.5; sheet = lay_out(source)) {
        const double before = sheet.quoted_share;
        source = helped(source, WarningKind::share_too_large);
        CHECK(lay_out(source).quoted_share < before);
        REQUIRE(++steps < 10);
    }
    CHECK(lay_out(source).warnings.empty());
}

TEST_CASE("whatever the script, what is offered makes a warning go, or quotes shorter") {
    std::mt19937 random(7);
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    const auto same = [](const Warning& a, const Warning& b) { return a.kind == b.kind && a.item == b.item; };
    // What lies over the limit, of all stretches of music without a word.
    const auto heard_in_silence = [](const Source& source, const CueSheet& sheet) {
        double sum = 0;
        for (const Stretch& s : stretches(source, sheet))
            sum += std::max(0.0, s.length.as_double() - source.settings.longest_quote.value());
        return sum;
    };
    int helps = 0, shares = 0, quotes = 0;
    for (int round = 0; round < 300; ++round) {
        std::vector<ScriptItem> items = {item(1, ScriptItemKind::opening, 0, words(4))};
        for (int i = 2; i < 7; ++i) {
            const bool aside = between(0, 1) < 0.3;
            items.push_back(item(i, aside ? ScriptItemKind::aside : ScriptItemKind::stop, between(0, 58),
                                 words(static_cast<int>(between(2, 20)))));
            if (!aside && between(0, 1) < 0.2) items.back().resume = Seconds(between(0, 58));
        }
        Source source = with(items);
        source.settings.longest_quote = Seconds(between(6, 40));
        source.settings.most_quoted_share = between(0.2, 1);
        const CueSheet sheet = lay_out(source);
        for (const Warning& warning : sheet.warnings) {
            const auto remedy = remedy_for(source, sheet, warning);
            if (!remedy) continue;
            ++helps;
            const Source changed = mended(source, *remedy);
            const CueSheet after = lay_out(changed);
            INFO("round " << round << ": " << warning.words << " -> " << remedy->words);
            if (warning.kind == WarningKind::share_too_large) {
                CHECK(after.quoted_share < sheet.quoted_share);
                ++shares;
                continue;
            }
            if (warning.kind == WarningKind::quote_too_long) {
                const bool waits = changed.items.size() > source.items.size() &&
                                   changed.items.back().kind == ScriptItemKind::stop;
                CHECK((waits || heard_in_silence(changed, after) < heard_in_silence(source, sheet)));
                ++quotes;
                continue;
            }
            for (const Warning& left : after.warnings)
                if (same(left, warning)) FAIL_CHECK(left.words);
        }
    }
    CHECK(helps - shares - quotes > 100);
    CHECK(shares > 30);
    CHECK(quotes > 30);
}
