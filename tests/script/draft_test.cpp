// The first draft of a script: what is in it, in which order, and whose words they are.
#include "script/draft.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace luft;
using namespace luft::script;
using namespace luft::script::testing;
using project::ScriptItem;
using project::ScriptItemKind;
using project::Verdict;

namespace {

bool contains(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

Source with(std::vector<project::Moment> moments) {
    Source source = material();
    source.moments = std::move(moments);
    return source;
}

} // namespace

TEST_CASE("a draft without moments is an opening and a closing") {
    const auto items = draft(material());
    REQUIRE(items.size() == 2);
    CHECK(items[0].kind == ScriptItemKind::opening);
    CHECK(contains(items[0].text, "Mara Lindqvist"));
    CHECK(contains(items[0].text, "“Harbour Lamps”"));
    CHECK(contains(items[0].text, "Ida Quill"));
    CHECK(contains(items[0].text, "house concert"));
    CHECK(items[1].kind == ScriptItemKind::closing);
}

TEST_CASE("each kept moment gets a stop at the end of its phrase, in order of time") {
    const auto items = draft(with({moment(1, 35, 36, Verdict::watch, {{"onset", "breathy"}}),
                                   moment(2, 6.2, 9, Verdict::strength, {{"vibrato", "even"}})}));
    REQUIRE(items.size() == 4);
    CHECK(items[1].moment == project::MomentId{2});
    CHECK(items[1].at == Seconds(12));
    CHECK(items[2].moment == project::MomentId{1});
    CHECK(items[2].at == Seconds(44));
    for (std::size_t i = 0; i < items.size(); ++i)
        CHECK(items[i].position == static_cast<int>(i) + 1);
}

TEST_CASE("proposed moments are no part of a draft") {
    auto proposed = moment(1, 6, 9, Verdict::watch, {{"onset", "breathy"}});
    proposed.state = project::MarkState::proposed;
    CHECK(draft(with({proposed})).size() == 2);
}

TEST_CASE("the coach's remark comes first, and the evidence is in the text") {
    Source source =
        with({moment(1, 6.2, 9, Verdict::strength, {{"vibrato", "even"}}, "I love this held note")});
    marks::Vibrato vibrato{Hertz(5.8), Cents(48), 0.9};
    std::get<marks::Note>(source.marks[2].what).vibrato = vibrato;
    const auto items = draft(source);
    CHECK(items[1].text.starts_with("I love this held note."));
    CHECK(contains(items[1].text, "six times a second"));
    CHECK(contains(items[1].text, "half a semitone"));
}

TEST_CASE("hints are worded as hints and the coach's facets as the coach's view") {
    // One of these is in every form for hints, one of those in every form for the coach's view.
    const std::set<std::string> hints = {"hint", "guess", "sounds as if"};
    const std::set<std::string> views = {"As I hear", "In my view", "My own impression", "To my eye",
                                         "I take this"};
    const auto any = [](const std::set<std::string>& marks, const std::string& text) {
        return std::any_of(marks.begin(), marks.end(),
                           [&](const std::string& m) { return contains(text, m); });
    };
    const std::vector<vocabulary::Tag> hinted = {
        {"larynx", "high"},   {"larynx", "rising"},    {"closure", "firm"},    {"resonance", "nasal"},
        {"larynx", "rising"}, {"vowel-shape", "tall"}, {"closure", "pressed"}, {"closure", "pressed"}};
    const std::vector<vocabulary::Tag> seen = {{"posture", "chin-raised"}, {"diction", "clear"},
                                               {"posture", "aligned"},     {"embellishment", "turn"},
                                               {"diction", "clear"},       {"diction", "swallowed"}};
    std::vector<project::Moment> moments;
    for (std::size_t i = 0; i < hinted.size(); ++i)
        moments.push_back(moment(static_cast<std::int64_t>(i) + 1, 5 + static_cast<double>(i),
                                 6 + static_cast<double>(i), Verdict::watch, {hinted[i]}));
    for (const auto& i : draft(with(moments)))
        if (i.kind == ScriptItemKind::stop) CHECK((any(hints, i.text)));
    moments.clear();
    for (std::size_t i = 0; i < seen.size(); ++i)
        moments.push_back(moment(static_cast<std::int64_t>(i) + 1, 5 + static_cast<double>(i),
                                 6 + static_cast<double>(i), Verdict::watch, {seen[i]}));
    for (const auto& i : draft(with(moments)))
        if (i.kind == ScriptItemKind::stop) {
            INFO(i.text);
            CHECK((any(views, i.text)));
        }
}

TEST_CASE("a drill is named with its aim, and again at the end") {
    auto m = moment(1, 6.2, 9, Verdict::watch, {{"onset", "breathy"}});
    m.drill = "light-staccato";
    const auto items = draft(with({m}));
    CHECK(contains(items[1].text, "“Light staccato”"));
    CHECK(contains(items[1].text, "brings the folds together neatly"));
    CHECK(contains(items.back().text, "“Light staccato”"));
}

TEST_CASE("the closing sums up what is strong and what to watch") {
    const auto items = draft(with({moment(1, 6, 9, Verdict::strength, {{"vibrato", "even"}}),
                                   moment(2, 16, 18, Verdict::watch, {{"offset", "trailing"}})}));
    CHECK(contains(items.back().text, "does well: an even vibrato"));
    CHECK(contains(items.back().text, "watch: a release that trails off"));
}

TEST_CASE("moments alike are not spoken of in the same sentences") {
    std::vector<project::Moment> moments;
    for (int i = 0; i < 4; ++i)
        moments.push_back(moment(i + 1, 5 + i, 5.5 + i, Verdict::watch, {{"onset", "breathy"}}));
    std::set<std::string> texts;
    for (const auto& i : draft(with(moments)))
        if (i.kind == ScriptItemKind::stop) texts.insert(i.text);
    CHECK(texts.size() == 4);
}

TEST_CASE("a very short explanation becomes an aside in the rest after it") {
    const auto items = draft(with({moment(1, 10, 12, Verdict::explain, {}, "A quick breath.")}));
    REQUIRE(items.size() == 3);
    CHECK(items[1].kind == ScriptItemKind::aside);
    CHECK(items[1].text == "A quick breath.");
    CHECK(items[1].at > Seconds(12));
    Source source = material();
    source.items = items;
    for (const Warning& w : lay_out(source).warnings)
        CHECK(w.kind != WarningKind::aside_on_singing);
    // Ten words don't fit between 12 and 15 s.
    CHECK(draft(with({moment(1, 10, 12, Verdict::explain, {}, words(10))}))[1].kind == ScriptItemKind::stop);
}

TEST_CASE("the coach's own words come through a new draft untouched") {
    Source source = with({moment(1, 6.2, 9, Verdict::watch, {{"onset", "breathy"}}),
                          moment(2, 16, 18, Verdict::watch, {{"offset", "trailing"}})});
    auto own = item(7, ScriptItemKind::stop, 13, "My own words, with <b>marks</b>.\n\nTwo paragraphs.");
    own.own_words = true;
    own.moment = project::MomentId{1};
    own.replay = Span{Seconds(6), Seconds(7)};
    own.replay_speed = 0.3;
    own.rehearsed = Seconds(4);
    own.resume = Seconds(11);
    auto gone = own; // its moment is no longer there, but the words are the coach's
    gone.id = {8};
    gone.moment = project::MomentId{99};
    gone.at = Seconds(20);
    auto opening = item(9, ScriptItemKind::opening, 0, "Hello from me.");
    opening.own_words = true;
    source.items = {own, gone, opening};
    const auto items = draft(source);
    REQUIRE(items.size() == 5);
    CHECK(items[0].id == project::ScriptItemId{9});
    CHECK(items[0].text == "Hello from me.");
    const ScriptItem& kept = items[1];
    CHECK(kept.id == own.id);
    CHECK(kept.text == own.text);
    CHECK(kept.at == own.at);
    CHECK(kept.replay == own.replay);
    CHECK(kept.replay_speed == own.replay_speed);
    CHECK(kept.rehearsed == own.rehearsed);
    CHECK(kept.resume == own.resume);
    CHECK(items[2].id == gone.id);
    CHECK(items[2].text == gone.text);
}

TEST_CASE("a draft again words stored items anew in their place, and leaves out those without a moment") {
    Source source = with({moment(1, 6.2, 9, Verdict::watch, {{"onset", "breathy"}})});
    auto stale = item(7, ScriptItemKind::stop, 12.5, "An older draft.");
    stale.moment = project::MomentId{1};
    stale.rehearsed = Seconds(3);
    auto gone = item(8, ScriptItemKind::stop, 20, "About a moment that was dropped.");
    gone.moment = project::MomentId{99};
    source.items = {stale, gone};
    const auto items = draft(source);
    REQUIRE(items.size() == 3);
    CHECK(items[1].id == stale.id);
    CHECK(items[1].at == stale.at);
    CHECK(items[1].text != stale.text);
    CHECK_FALSE(items[1].rehearsed); // it timed other words
    source.items = items;
    const auto again = draft(source);
    REQUIRE(again.size() == items.size());
    for (std::size_t i = 0; i < again.size(); ++i)
        CHECK(again[i].text == items[i].text);
}

TEST_CASE("shades that the coach added are spoken of by their own names") {
    Source source = with({moment(1, 6, 9, Verdict::explain, {{"stagecraft", "gaze"}})});
    vocabulary::Facet own;
    own.key = "stagecraft";
    own.name = "Stagecraft";
    own.basis = vocabulary::Basis::coach;
    own.own = true;
    own.shades = {{"gaze", "steady gaze", "the singer looks at one person", vocabulary::Leaning::neutral}};
    source.vocabulary.facets.push_back(own);
    const auto items = draft(source);
    CHECK(contains(items[1].text, "“steady gaze stagecraft”"));
    CHECK(contains(items[1].text, "The singer looks at one person."));
}

TEST_CASE("a draft of ordinary moments lays out without stops in notes or asides on singing") {
    Source source = with({moment(1, 4, 5, Verdict::watch, {{"onset", "glottal"}}),
                          moment(2, 16, 20, Verdict::strength, {{"phrasing", "long-line"}}),
                          moment(3, 36, 40, Verdict::explain, {{"register", "head"}})});
    source.items = draft(source);
    for (const Warning& w : lay_out(source).warnings) {
        CHECK(w.kind != WarningKind::stop_in_note);
        CHECK(w.kind != WarningKind::aside_on_singing);
        CHECK(w.kind != WarningKind::stops_too_close);
    }
}
