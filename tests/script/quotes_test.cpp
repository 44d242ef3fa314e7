// A stop that quotes another performance: laid out, counted, warned about, mended, drafted.
#include "script/draft.h"
#include "script/figures.h"
#include "script/remedy.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace luft;
using namespace luft::script;
using namespace luft::script::testing;
using project::ScriptItem;
using project::ScriptItemKind;
using project::Verdict;

namespace {

/// A stop at the first phrase's end that quotes the other performance.
ScriptItem quoting(double from, double to) {
    ScriptItem stop = item(2, ScriptItemKind::stop, 12, words(5)); // 2 s
    stop.quote = project::Quote{{2}, {Seconds(from), Seconds(to)}};
    return stop;
}

Source quoted(ScriptItem stop) {
    return compared({std::move(stop)});
}

std::vector<SegmentKind> kinds(const CueSheet& sheet) {
    std::vector<SegmentKind> all;
    for (const Segment& s : sheet.segments)
        all.push_back(s.kind);
    return all;
}

std::vector<WarningKind> warned(const CueSheet& sheet) {
    std::vector<WarningKind> all;
    for (const Warning& w : sheet.warnings)
        all.push_back(w.kind);
    return all;
}

/// The drafted script as it would be stored.
std::vector<ScriptItem> stored_draft(const Source& source) {
    auto items = draft(source);
    for (std::size_t i = 0; i < items.size(); ++i)
        items[i].id = {static_cast<std::int64_t>(i) + 70};
    return items;
}

bool announced(const std::vector<ScriptItem>& drafted) {
    return drafted.front().text.find("Ilse Brandt") != std::string::npos;
}

Source mended(Source source, const Remedy& remedy) {
    for (const ScriptItem& changed : remedy.items)
        *std::ranges::find(source.items, changed.id, &ScriptItem::id) = changed;
    return source;
}

} // namespace

TEST_CASE("a quote of another performance is heard between the talk and the replay, at their speed") {
    ScriptItem stop = quoting(10, 13);
    stop.replay = Span{Seconds(6), Seconds(8)};
    stop.replay_speed = 0.5;
    const CueSheet sheet = lay_out(quoted(stop));
    using enum SegmentKind;
    CHECK(kinds(sheet) == std::vector{play, talk, quote, replay, play});
    const Segment& s = sheet.segments[2];
    CHECK(s.other == project::PerformanceId{2});
    CHECK(s.item == stop.id);
    CHECK(s.stop_number == 1);
    CHECK(s.media_start == Rational(10));
    CHECK(s.media_end == Rational(13));
    CHECK(s.speed == Rational(1, 2));
    CHECK(s.programme_start == Rational(14));
    CHECK(s.programme_end == Rational(20)); // 3 s at half speed
    CHECK(s.title == "Compare at half speed: B (Ilse Brandt)");
    CHECK(sheet.segments[3].programme_start == Rational(20));
    CHECK(!sheet.segments[3].other);
    CHECK(sheet.segments[4].media_start == Rational(12)); // the other's time leaves ours alone
}

TEST_CASE("a quote's times are whole programme frames, whatever the other recording's rate") {
    Source source = quoted(quoting(10.013, 12.991));
    source.others[0].performance.facts.has_video = true;
    source.others[0].performance.facts.frame_rate_num = 24;
    source.settings.frame_rate_num = 30000;
    source.settings.frame_rate_den = 1001;
    const CueSheet sheet = lay_out(source);
    const Segment& s = sheet.segments.at(2);
    for (const Rational t : {s.programme_start, s.programme_end, s.media_start, s.media_end})
        CHECK((t * Rational(30000, 1001)).den() == 1);
    CHECK((s.media_start * Rational(30000, 1001)).num() == 300); // 10.013 s x 29.97 = 300.09
    CHECK((s.media_end * Rational(30000, 1001)).num() == 389);   // 12.991 s x 29.97 = 389.34
}

TEST_CASE("each recording's figures count that recording alone, and the longest quote goes through both") {
    ScriptItem first = quoting(10, 14), second = quoting(12, 15);
    second.id = {3};
    second.at = Seconds(24);
    first.replay = Span{Seconds(6), Seconds(8)};
    const CueSheet sheet = lay_out(compared({first, second}));
    CHECK(sheet.quoted == Rational(62)); // 60 s and the replay
    CHECK(sheet.quoted_once == Rational(60));
    CHECK(sheet.quoted_share == 1);
    CHECK(sheet.talk_time == Rational(4));
    CHECK(sheet.running_time == Rational(4 + 62 + 7));
    REQUIRE(sheet.others.size() == 1);
    const QuotedOther& other = sheet.others[0];
    CHECK(other.performance == project::PerformanceId{2});
    CHECK(other.quoted == Rational(7));
    CHECK(other.quoted_once == Rational(5)); // 10 to 15
    CHECK(other.quoted_share == Approx(5.0 / 40));
    CHECK(other.longest_quote == Rational(4));
    CHECK(sheet.longest_quote == Rational(3 + 36)); // the second quote, and the music to the end
}

TEST_CASE("a quote and the music after it are too long together where no word parts them") {
    Source source = quoted(quoting(10, 20));
    source.settings.longest_quote = Seconds(50);
    const CueSheet sheet = lay_out(source); // 10 s of B and 48 s of the recording
    REQUIRE(warned(sheet) == std::vector{WarningKind::quote_too_long});
    CHECK(sheet.warnings[0].words.starts_with("From 0:10.0 of B (Ilse Brandt) on, 58.0 s run without"));
    CHECK(sheet.warnings[0].programme_start == sheet.segments[2].programme_start);
}

TEST_CASE("too long a quote ends at a phrase end of the other performance that makes it short enough") {
    Source source = quoted(quoting(3, 39));
    source.items.push_back(item(3, ScriptItemKind::closing, 12, words(5))); // no music follows it
    source.settings.longest_quote = Seconds(25);
    const CueSheet sheet = lay_out(source);
    REQUIRE(warned(sheet) == std::vector{WarningKind::quote_too_long});
    const auto remedy = remedy_for(source, sheet, sheet.warnings[0]);
    REQUIRE(remedy);
    CHECK(remedy->words == "Quote B only up to 0:26.0"); // its phrases end at 14, 26 and 38 s
    CHECK(lay_out(mended(source, *remedy)).warnings.empty());
}

TEST_CASE("too large a share of another performance is warned about and mended by itself") {
    Source source = quoted(quoting(3, 27));
    source.items.push_back(item(3, ScriptItemKind::closing, 12, words(5)));
    source.settings.most_quoted_share = 0.5;
    const CueSheet sheet = lay_out(source); // 12 of 60 s of the recording, 24 of 40 s of B
    REQUIRE(warned(sheet) == std::vector{WarningKind::share_too_large});
    CHECK(sheet.warnings[0].other == project::PerformanceId{2});
    CHECK(sheet.warnings[0].words == "The programme plays 60 % of B (Ilse Brandt) (set: at most 50 %); it "
                                     "would have to quote 4.0 s less: end quotes of it earlier, or leave one "
                                     "out.");
    const auto remedy = remedy_for(source, sheet, sheet.warnings[0]);
    REQUIRE(remedy);
    CHECK(remedy->words == "Quote B only up to 0:14.0");
    CHECK(lay_out(mended(source, *remedy)).warnings.empty());
}

TEST_CASE("a quote outside the other recording is warned about, and cut to what there is or left out") {
    struct Case {
        double from, to;
        std::size_t segments;
        const char* remedy;
    };
    const auto c = GENERATE(values<Case>({{35, 44, 4, "Quote B only from 0:35.0 to 0:40.0"},
                                          {-3, 2, 4, "Quote B only from 0:00.0 to 0:02.0"},
                                          {41, 44, 3, "Leave the quote out"},
                                          {1e5, 1e5 + 1, 3, "Leave the quote out"}}));
    const Source source = quoted(quoting(c.from, c.to));
    const CueSheet sheet = lay_out(source);
    CHECK(sheet.segments.size() == c.segments);
    REQUIRE(warned(sheet) == std::vector{WarningKind::quote_outside});
    CHECK(sheet.warnings[0].words.find("its recording is 0:40.0 long") != std::string::npos);
    const auto remedy = remedy_for(source, sheet, sheet.warnings[0]);
    REQUIRE(remedy);
    CHECK(remedy->words == c.remedy);
    CHECK(lay_out(mended(source, *remedy)).warnings.empty());
}

TEST_CASE("a stop inside a note that quotes past the other's end is mended in two steps, in either order") {
    ScriptItem stop = quoting(35, 44);
    stop.at = Seconds(10.5);
    for (const WarningKind first : {WarningKind::stop_in_note, WarningKind::quote_outside}) {
        Source source = quoted(stop);
        const auto mend = [&](WarningKind kind) {
            const CueSheet sheet = lay_out(source);
            const auto w = std::ranges::find(sheet.warnings, kind, &Warning::kind);
            REQUIRE(w != sheet.warnings.end());
            const auto remedy = remedy_for(source, sheet, *w);
            REQUIRE(remedy);
            source = mended(source, *remedy);
        };
        REQUIRE(warned(lay_out(source)).size() == 2);
        const WarningKind second =
            first == WarningKind::stop_in_note ? WarningKind::quote_outside : WarningKind::stop_in_note;
        mend(first);
        CHECK(warned(lay_out(source)) == std::vector{second});
        mend(second);
        CHECK(warned(lay_out(source)).empty());
        CHECK(source.items[0].at == Seconds(12));
        CHECK(source.items[0].quote->span == Span{Seconds(35), Seconds(40)});
    }
}

TEST_CASE("a quote of a performance that isn't in the project is warned about and left out") {
    Source source = quoted(quoting(10, 13));
    source.others.clear();
    const CueSheet sheet = lay_out(source);
    CHECK(sheet.segments.size() == 3);
    CHECK(sheet.others.empty());
    CHECK(warned(sheet) == std::vector{WarningKind::quote_outside});
}

TEST_CASE("a quote's speed is refused as a replay's is") {
    ScriptItem stop = quoting(10, 13);
    stop.replay_speed = 0.2;
    CHECK_THROWS_AS(lay_out(quoted(stop)), Error);
}

TEST_CASE("a moment that is compared becomes a stop which quotes its counterpart and replays it") {
    Source source = compared({});
    // As an explanation of four words it would be an aside in the rest after the phrase.
    source.moments = {moment(1, 9, 12, Verdict::explain, {}, "Hear this ending now.")};
    CHECK(draft(source).at(1).kind == ScriptItemKind::aside);
    source.moments[0].beside = project::Quote{{2}, {Seconds(11), Seconds(14)}};
    const auto items = draft(source);
    const ScriptItem& stop = items.at(1);
    CHECK(stop.kind == ScriptItemKind::stop);
    REQUIRE(stop.quote);
    CHECK(stop.quote->performance == project::PerformanceId{2});
    CHECK(stop.quote->span == Span{Seconds(10.5), Seconds(14.5)}); // half a second around it
    CHECK(stop.replay.has_value());
    CHECK(stop.text == "Hear this ending now. Listen first to Ilse Brandt, and then here again.");
    CHECK(items.front().text.find(" Beside it we hear a little of Ilse Brandt.") != std::string::npos);
    CHECK(draft(source).at(1).text == stop.text); // the same source, the same words
}

TEST_CASE("an aside that a moment had before it was compared becomes a stop in the next draft") {
    Source source = compared({});
    source.moments = {moment(1, 9, 12, Verdict::explain, {}, "Hear this ending now.")};
    source.items = stored_draft(source);
    source.moments[0].beside = project::Quote{{2}, {Seconds(11), Seconds(14)}};
    const ScriptItem stop = draft(source).at(1);
    CHECK(stop.id == source.items[1].id);
    CHECK(stop.kind == ScriptItemKind::stop);
    CHECK(stop.quote.has_value());
}

TEST_CASE("a stop keeps that its quote was taken away, and its words don't lead to one") {
    Source source = compared({});
    source.moments = {moment(1, 9, 12, Verdict::watch, {}, "Hear this ending now.")};
    source.moments[0].beside = project::Quote{{2}, {Seconds(11), Seconds(14)}};
    source.items = stored_draft(source);
    source.items[1].quote.reset();
    const auto drafted = draft(source);
    CHECK(!drafted.at(1).quote);
    CHECK(drafted.at(1).text.find("Ilse") == std::string::npos);
    CHECK(!announced(drafted)); // nor does the opening
}

TEST_CASE("a moment compared after its stop was drafted isn't announced: the stop doesn't quote") {
    Source source = compared({});
    source.moments = {moment(1, 9, 12, Verdict::watch, {}, "Hear this ending now.")};
    source.items = stored_draft(source);
    source.moments[0].beside = project::Quote{{2}, {Seconds(11), Seconds(14)}};
    const auto drafted = draft(source);
    CHECK(drafted.at(1).kind == ScriptItemKind::stop);
    CHECK(!drafted.at(1).quote);
    CHECK(drafted.at(1).text.find("Ilse") == std::string::npos);
    CHECK(!announced(drafted));
}

TEST_CASE("a quote set by hand is announced and led to, without a comparison; own words are only announced") {
    Source source = compared({});
    source.moments = {moment(1, 9, 12, Verdict::watch, {}, "Hear this ending now.")};
    source.items = stored_draft(source);
    CHECK(!announced(source.items));
    source.items[1].quote = project::Quote{{2}, {Seconds(11), Seconds(14)}};
    const auto drafted = draft(source);
    CHECK(drafted.at(1).text.find("Ilse Brandt") != std::string::npos);
    CHECK(announced(drafted));

    source.items[1].own_words = true;
    source.items[1].text = "And now the other one.";
    CHECK(draft(source).at(1).text == "And now the other one.");
    CHECK(announced(draft(source)));
}

TEST_CASE("a stop whose quote went with its performance is reworded, unless its words are the coach's own") {
    Source source = compared({});
    source.moments = {moment(1, 9, 12, Verdict::watch, {}, "Hear this ending now."),
                      moment(2, 20, 24, Verdict::watch, {}, "And this one.")};
    for (auto& m : source.moments)
        m.beside = project::Quote{{2}, {Seconds(11), Seconds(14)}};
    source.items = stored_draft(source);
    source.items.at(2).own_words = true;
    const std::string own = source.items[2].text;
    REQUIRE(source.items[1].text.find("Ilse Brandt") != std::string::npos);
    source.others.clear();
    for (auto& m : source.moments)
        m.beside.reset();
    for (auto& i : source.items)
        i.quote.reset();
    const auto drafted = draft(source);
    CHECK(drafted.at(1).id == source.items[1].id);
    CHECK(drafted.at(1).text.find("Ilse") == std::string::npos);
    CHECK(!announced(drafted));
    CHECK(drafted.at(2).text == own);
}

TEST_CASE("a performance of the same singer is called by its label, which tells the two apart") {
    Source source = compared({});
    source.others[0].performance.performer = source.performance.performer;
    source.moments = {moment(1, 9, 12, Verdict::watch, {}, "Hear this ending now.")};
    source.moments[0].beside = project::Quote{{2}, {Seconds(11), Seconds(14)}};
    CHECK(draft(source).at(1).text.find("the performance “B”") != std::string::npos);
}
