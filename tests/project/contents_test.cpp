// What is put into a project comes out again, also after closing.
#include "desk.h"

using namespace desk;

namespace {

void check_same(const Moment& a, const Moment& b) {
    CHECK(a.performance == b.performance);
    CHECK(a.span == b.span);
    CHECK(a.state == b.state);
    CHECK(a.origin == b.origin);
    CHECK(a.verdict == b.verdict);
    CHECK(a.remark == b.remark);
    CHECK(a.evidence == b.evidence);
    CHECK(a.confidence == b.confidence);
    CHECK(a.shades == b.shades);
    CHECK(a.drill == b.drill);
}

void check_same(const ScriptItem& a, const ScriptItem& b) {
    CHECK(a.id == b.id);
    CHECK(a.performance == b.performance);
    CHECK(a.kind == b.kind);
    CHECK(a.moment == b.moment);
    CHECK(a.at == b.at);
    CHECK(a.replay == b.replay);
    CHECK(a.replay_speed == b.replay_speed);
    CHECK(a.resume == b.resume);
    CHECK(a.text == b.text);
    CHECK(a.own_words == b.own_words);
    CHECK(a.rehearsed == b.rehearsed);
}

Moment full_moment(PerformanceId a) {
    Moment m;
    m.performance = a;
    m.span = span(1.0 / 3, 2.0 / 3);
    m.state = MarkState::proposed;
    m.origin = Origin::detected;
    m.verdict = Verdict::watch;
    m.remark = "Ein \xC3\x9C"
               "bergang.\nListen.";
    m.evidence = "air before the tone";
    m.confidence = {0.625};
    m.shades = {{"register", "switch-break"}, {"breath", "full"}};
    m.drill = "passaggio-siren";
    return m;
}

} // namespace

TEST_CASE("piece and script settings come back as they were set") {
    Sample s;
    CHECK(s.project.piece().words == "One line\nand another");
    CHECK(s.project.script_settings().words_per_minute == 150);
    CHECK_FALSE(s.project.script_settings().most_quoted_share);
    ScriptSettings settings;
    settings.words_per_minute = 141.7;
    settings.least_between_stops = Seconds(9.1);
    settings.longest_quote = Seconds(1.0 / 3);
    settings.most_quoted_share = 0.35;
    settings.frame_rate_num = 30000;
    settings.frame_rate_den = 1001;
    settings.drop_frame = false;
    s.project.set_piece({"T", "w", "k", "m", "x"});
    s.project.set_script_settings(settings);
    s.reopen(Access::read);
    const Piece piece = s.project.piece();
    CHECK(piece.title + piece.writer + piece.key + piece.metre + piece.words == "Twkmx");
    const ScriptSettings back = s.project.script_settings();
    CHECK(back.words_per_minute == 141.7);
    CHECK(back.least_between_stops == Seconds(9.1));
    CHECK(back.longest_quote == Seconds(1.0 / 3));
    CHECK(back.most_quoted_share == 0.35);
    CHECK(back.frame_rate_num == 30000);
    CHECK(back.frame_rate_den == 1001);
    CHECK_FALSE(back.drop_frame);
}

TEST_CASE("a new project holds the default vocabulary, in its order and wording") {
    Sample s;
    const auto stored = s.project.vocabulary();
    const auto expected = vocabulary::default_vocabulary();
    REQUIRE(stored.facets.size() == expected.facets.size());
    for (std::size_t f = 0; f < expected.facets.size(); ++f) {
        const auto& a = stored.facets[f];
        const auto& b = expected.facets[f];
        CHECK(a.key == b.key);
        CHECK(a.name == b.name);
        CHECK(a.description == b.description);
        CHECK(a.basis == b.basis);
        REQUIRE(a.shades.size() == b.shades.size());
        for (std::size_t i = 0; i < a.shades.size(); ++i) {
            CHECK(a.shades[i].key == b.shades[i].key);
            CHECK(a.shades[i].name == b.shades[i].name);
            CHECK(a.shades[i].description == b.shades[i].description);
            CHECK(a.shades[i].leaning == b.shades[i].leaning);
        }
    }
    REQUIRE(stored.drills.size() == expected.drills.size());
    for (std::size_t d = 0; d < expected.drills.size(); ++d) {
        CHECK(stored.drills[d].key == expected.drills[d].key);
        CHECK(stored.drills[d].title == expected.drills[d].title);
        CHECK(stored.drills[d].aim == expected.drills[d].aim);
        CHECK(stored.drills[d].steps == expected.drills[d].steps);
        CHECK(stored.drills[d].caution == expected.drills[d].caution);
        CHECK(stored.drills[d].trains == expected.drills[d].trains);
        CHECK_FALSE(stored.drills[d].own);
    }
}

TEST_CASE("facets, shades and drills of the coach's own are added, known as such, and can be used") {
    Sample s;
    using vocabulary::Basis;
    using vocabulary::Leaning;
    s.project.add_facet(
        {"stage", "Stage", "What is seen.", Basis::coach, {{"calm", "calm", "Still.", Leaning::strength}}});
    s.project.add_shade("stage", {"restless", "restless", "Moves a lot.", Leaning::watch});
    s.project.put_drill({"stand", "Stand", "Calms.", {"Stand.", "Sing."}, "", {{"stage", "restless"}}});
    s.project.put_drill({"straw", "Straw, my way", "Eases.", {"Hum."}, "Short.", {{"closure", ""}}});
    s.reopen();
    const auto v = s.project.vocabulary();
    CHECK(v.facets.back().key == "stage");
    CHECK(v.facets.back().own);
    REQUIRE(v.shade({"stage", "restless"}));
    CHECK(v.shade({"stage", "restless"})->leaning == Leaning::watch);
    REQUIRE(v.drills_for({"stage", "restless"}).size() == 1);
    CHECK(v.drill("straw")->title == "Straw, my way");
    CHECK(v.drill("straw")->own);
    CHECK(v.drills.size() == vocabulary::default_vocabulary().drills.size() + 1);
    Moment m = full_moment(s.a);
    m.shades = {{"stage", "restless"}};
    m.drill = "stand";
    CHECK(s.project.moment(s.project.add_moment(m)).drill == "stand");
}

TEST_CASE("words that the vocabulary can't take are refused") {
    Sample s;
    using vocabulary::Basis;
    using vocabulary::Leaning;
    const vocabulary::Shade calm{"calm", "calm", "Still.", Leaning::strength};
    const auto bad = [&](auto call) { CHECK(fault_of(call) == Fault::bad_request); };
    bad([&] { s.project.add_facet({"onset", "Onset", "x", Basis::coach, {}}); });
    bad([&] { s.project.add_facet({"On set", "Onset", "x", Basis::coach, {}}); });
    bad([&] { s.project.add_facet({"stage", " ", "x", Basis::coach, {}}); });
    bad([&] { s.project.add_facet({"stage", "Stage", "x", Basis::coach, {calm, calm}}); });
    bad([&] { s.project.add_shade("onset", {"glottal", "again", "x", Leaning::watch}); });
    bad([&] { s.project.put_drill({"x", "X", "a", {}, "", {{"onset", "nothing"}}}); });
    CHECK(fault_of([&] { s.project.add_shade("stage", calm); }) == Fault::not_found);
    CHECK_FALSE(s.project.vocabulary().facet("stage")); // nothing of the refused ones has stayed
    CHECK(s.project.journal().size() == 1);
}

TEST_CASE("an analysis comes back with its curves to the bit, and none stays none") {
    Sample s;
    CHECK_FALSE(s.project.listening(s.a));
    CHECK(s.project.curves(s.a).frames() == 0);
    const marks::Analysis a = analysis();
    s.project.store_listening(s.a, a);
    s.reopen(Access::read);
    const voice::Curves c = s.project.curves(s.a);
    const auto same = [](const auto& x, const auto& y) {
        REQUIRE(x.size() == y.size());
        for (std::size_t i = 0; i < x.size(); ++i) {
            if (i % 7 == 0)
                CHECK(std::isnan(x.raw()[i]));
            else if (x.raw()[i] != y.raw()[i])
                FAIL_CHECK("frame " << i << " differs");
        }
    };
    same(c.f0, a.curves.f0);
    same(c.voicing, a.curves.voicing);
    same(c.loudness, a.curves.loudness);
    same(c.level, a.curves.level);
    same(c.cpp, a.curves.cpp);
    same(c.hnr, a.curves.hnr);
    same(c.h1h2, a.curves.h1h2);
    same(c.ring, a.curves.ring);
    same(c.alpha, a.curves.alpha);
    same(c.centroid, a.curves.centroid);
    same(c.f1, a.curves.f1);
    same(c.f2, a.curves.f2);
    same(c.f3, a.curves.f3);
    same(c.head_register, a.curves.head_register);
    const auto l = s.project.listening(s.a);
    REQUIRE(l);
    CHECK(l->setting == voice::Setting::alone);
    CHECK(l->tuning == Hertz(441.5));
    CHECK(l->loudness.integrated == Lufs(-18.25));
    CHECK(l->loudness.range == LoudnessUnits(6.5));
    CHECK(l->loudness.true_peak == Decibels(-1.5));
    CHECK_FALSE(l->one_register);
    CHECK(l->duration == Seconds(3));
}

TEST_CASE("an analysis without loudness or frames can be stored, and curves of unequal length can't") {
    Sample s;
    marks::Analysis a;
    a.tuning = Hertz(440);
    s.project.store_listening(s.a, a);
    CHECK_FALSE(s.project.listening(s.a)->loudness.integrated);
    CHECK(s.project.curves(s.a).frames() == 0);
    a = analysis();
    a.curves.ring.push(Decibels(1));
    CHECK(fault_of([&] { s.project.store_listening(s.a, a); }) == Fault::internal);
    CHECK(s.project.curves(s.a).frames() == 0);
    CHECK(s.project.marks(s.a).empty());
    CHECK(s.project.check().empty());
}

TEST_CASE("marks of every kind come back with all their values") {
    Sample s;
    marks::Note n = note(0.1, 1.1, 61.2345678901234567);
    n.cents = Cents(-12.25);
    n.drift = Cents(3.5);
    n.scoop = Cents(80);
    n.vibrato = marks::Vibrato{Hertz(5.6), Cents(71), 0.875};
    n.onset = {marks::OnsetKind::glottal, {0.75}, "a \"click\""};
    n.offset = {marks::OffsetKind::trailing, {0.5}, "fades"};
    n.vowel = marks::Vowel{Hertz(310), Hertz(2250), "i\xCB\x90"};
    n.sung_in = marks::Register::head;
    n.level = Decibels(-23.5);
    n.shape = marks::LevelShape::swelling;
    n.level_change = Decibels(-1.25);
    n.dynamic = marks::Dynamic::pp;
    marks::Analysis a = analysis();
    a.notes = {n, note(1.6, 2.8)};
    const marks::PhraseLevel swell{marks::LevelShape::swelling, Decibels(1.5), Decibels(4.75), 0.625,
                                   Confidence{0.8125}};
    for (marks::Phrase& p : a.phrases)
        p.level = swell, p.dynamic = marks::Dynamic::ff;
    s.project.store_listening(s.a, a);
    s.reopen();
    const auto all = s.project.marks(s.a);
    REQUIRE(all.size() == 6);
    CHECK(std::ranges::is_sorted(all, {}, [](const Mark& m) { return m.span().start; }));
    const auto& back = std::get<marks::Note>(
        std::ranges::find_if(all, [](const Mark& m) { return m.kind() == MarkKind::note; })->what);
    CHECK(back.span == n.span);
    CHECK(back.pitch == n.pitch);
    CHECK(back.cents == n.cents);
    CHECK(back.drift == n.drift);
    CHECK(back.scoop == n.scoop);
    REQUIRE(back.vibrato);
    CHECK(back.vibrato->rate == n.vibrato->rate);
    CHECK(back.vibrato->extent == n.vibrato->extent);
    CHECK(back.vibrato->regularity == n.vibrato->regularity);
    CHECK(back.onset.kind == n.onset.kind);
    CHECK(back.onset.confidence == n.onset.confidence);
    CHECK(back.onset.evidence == n.onset.evidence);
    CHECK(back.offset.kind == n.offset.kind);
    REQUIRE(back.vowel);
    CHECK(back.vowel->f1 == n.vowel->f1);
    CHECK(back.vowel->f2 == n.vowel->f2);
    CHECK(back.vowel->nearest == n.vowel->nearest);
    CHECK(back.sung_in == n.sung_in);
    CHECK(back.level == n.level);
    CHECK(back.shape == n.shape);
    CHECK(back.level_change == n.level_change);
    CHECK(back.dynamic == marks::Dynamic::pp);
    CHECK(back.confidence == n.confidence);
    CHECK(back.evidence == n.evidence);
    const auto& plain =
        std::get<marks::Note>(std::ranges::find_if(all, [](const Mark& m) {
                                  return m.kind() == MarkKind::note && m.span().start > Seconds(1.5);
                              })->what);
    CHECK_FALSE(plain.dynamic);
    CHECK_FALSE(plain.vibrato);
    CHECK_FALSE(plain.scoop);
    CHECK_FALSE(plain.vowel);
    CHECK_FALSE(plain.sung_in);
    for (const Mark& m : all) {
        CHECK(s.project.mark(m.id).span() == m.span());
        if (m.kind() == MarkKind::phrase) {
            const auto& p = std::get<marks::Phrase>(m.what);
            REQUIRE(p.level);
            CHECK(p.level->shape == swell.shape);
            CHECK(p.level->change == swell.change);
            CHECK(p.level->rise == swell.rise);
            CHECK(p.level->peak_at == swell.peak_at);
            CHECK(p.level->confidence == swell.confidence);
            CHECK(p.dynamic == marks::Dynamic::ff);
        }
        if (m.kind() == MarkKind::breath) {
            const auto& b = std::get<marks::Breath>(m.what);
            CHECK(b.evidence_kind == marks::BreathEvidence::heard);
            CHECK(b.below_voice == Decibels(24.5));
            CHECK_FALSE(b.inside_phrase);
        }
        if (m.kind() == MarkKind::register_switch) {
            const auto& w = std::get<marks::Switch>(m.what);
            CHECK(w.time == Seconds(2));
            CHECK(w.from == marks::Register::chest);
            CHECK(w.to == marks::Register::head);
            CHECK_FALSE(w.leap);
        }
    }
}

TEST_CASE("moments come back whole, in order of time, dropped ones only when asked for") {
    Sample s;
    Moment late = full_moment(s.a);
    late.span = span(2, 3);
    const MomentId id_late = s.project.add_moment(late);
    const MomentId id = s.project.add_moment(full_moment(s.a));
    s.reopen();
    check_same(s.project.moment(id), full_moment(s.a));
    REQUIRE(s.project.moments(s.a).size() == 2);
    CHECK(s.project.moments(s.a)[0].id == id);
    s.project.set_moment_state(id, MarkState::dropped);
    REQUIRE(s.project.moments(s.a).size() == 1);
    CHECK(s.project.moments(s.a)[0].id == id_late);
    CHECK(s.project.moments(s.a, true).size() == 2);
    check_same(s.project.moments(s.a)[0], late);
}

TEST_CASE("moments that make no sense are refused") {
    Sample s;
    const auto bad = [&](auto change) {
        Moment m = full_moment(s.a);
        change(m);
        CHECK(fault_of([&] { s.project.add_moment(m); }) == Fault::bad_request);
    };
    bad([](Moment& m) { m.span = span(1, 1); });
    bad([](Moment& m) { m.span = span(2, 1); });
    bad([](Moment& m) { m.span = span(-0.1, 1); });
    bad([](Moment& m) { m.span = span(0, NAN); });
    bad([](Moment& m) { m.span = span(0, INFINITY); });
    bad([](Moment& m) { m.shades = {{"onset", "loud"}}; });
    bad([](Moment& m) { m.drill = "none-such"; });
    bad([](Moment& m) { m.confidence = {1.1}; });
    Moment m = full_moment({99});
    CHECK(fault_of([&] { s.project.add_moment(m); }) == Fault::not_found);
    CHECK(fault_of([&] { (void)s.project.moment({99}); }) == Fault::not_found);
    CHECK(s.project.moments(s.a, true).empty());
}

TEST_CASE("script items come back whole") {
    Sample s;
    ScriptItem item;
    item.performance = s.a;
    item.kind = ScriptItemKind::stop;
    item.moment = s.project.add_moment(full_moment(s.a));
    item.at = Seconds(1.1);
    item.replay = span(0.2, 1.1);
    item.replay_speed = 0.75;
    item.resume = Seconds(0.9);
    item.text = "Did you hear it?";
    item.own_words = true;
    item.rehearsed = Seconds(4.25);
    item.id = s.project.add_script_item(item);
    ScriptItem bare;
    bare.performance = s.a;
    bare.kind = ScriptItemKind::closing;
    bare.id = s.project.add_script_item(bare);
    s.reopen();
    const auto script = s.project.script(s.a);
    REQUIRE(script.size() == 2);
    check_same(script[0], item);
    check_same(script[1], bare);
    CHECK(script[0].position == 1);
    CHECK(script[1].position == 2);
}

TEST_CASE("text that isn't valid UTF-8 is stored as valid UTF-8, without NUL") {
    Sample s;
    s.project.set_piece({std::string("a\0b\xFFz", 5), "\xC3", "ok \xE2\x99\xAA", "", ""});
    const Piece piece = s.project.piece();
    CHECK(piece.title == "ab\xEF\xBF\xBDz");
    CHECK(piece.writer == "\xEF\xBF\xBD");
    CHECK(piece.key == "ok \xE2\x99\xAA");
    marks::Breath b = breath(1, 2);
    b.evidence = "x\xFE";
    CHECK(s.project.mark(s.project.add_mark({{}, s.a, {}, {}, b})).evidence() == "x\xEF\xBF\xBD");
    marks::Note n = note(1, 2);
    n.onset.evidence = "\xFF";
    const Mark back = s.project.mark(s.project.add_mark({{}, s.a, {}, {}, n}));
    CHECK(std::get<marks::Note>(back.what).onset.evidence == "\xEF\xBF\xBD");
}

TEST_CASE("settings and a piece that make no sense are refused") {
    Sample s;
    CHECK(fault_of([&] { s.project.set_piece({" \n", "", "", "", ""}); }) == Fault::bad_request);
    const auto bad = [&](auto change) {
        ScriptSettings settings;
        change(settings);
        CHECK(fault_of([&] { s.project.set_script_settings(settings); }) == Fault::bad_request);
    };
    bad([](ScriptSettings& x) { x.words_per_minute = 0; });
    bad([](ScriptSettings& x) { x.words_per_minute = NAN; });
    bad([](ScriptSettings& x) { x.least_between_stops = Seconds(-1); });
    bad([](ScriptSettings& x) { x.longest_quote = Seconds(0); });
    bad([](ScriptSettings& x) { x.most_quoted_share = 1.5; });
    bad([](ScriptSettings& x) { x.frame_rate_den = 0; });
    CHECK(s.project.script_settings().words_per_minute == 150);
}
