// Whatever comes in: no crash, nothing claimed that isn't there, the same answer twice.
#include "base/error.h"
#include "marks/heard.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::marks;

namespace {

void claims_nothing(const Analysis& a) {
    CHECK(a.notes.empty());
    CHECK(a.breaths.empty());
    CHECK(a.phrases.empty());
    CHECK(a.switches.empty());
    CHECK(a.one_register);
    CHECK(a.tuning == Hertz(440));
}

void well_formed(const Analysis& a) {
    const auto sure = [](Confidence c) { return c.value >= 0 && c.value <= 1; };
    const auto inside = [&](Span s) {
        return s.start >= Seconds(-1e-9) && s.start < s.end && s.end <= a.duration + Seconds(0.02);
    };
    Seconds last{-1};
    for (const Note& n : a.notes) {
        CHECK(inside(n.span));
        CHECK(n.span.start >= last);
        last = n.span.start;
        CHECK(sure(n.confidence));
        CHECK(sure(n.onset.confidence));
        CHECK(sure(n.offset.confidence));
        CHECK_FALSE(n.evidence.empty());
        CHECK_FALSE(n.onset.evidence.empty());
        CHECK_FALSE(n.offset.evidence.empty());
        CHECK(std::isfinite(n.level.value()));
    }
    for (const Breath& b : a.breaths) {
        CHECK(inside(b.span));
        CHECK(sure(b.confidence));
        CHECK_FALSE(b.evidence.empty());
    }
    for (const Phrase& p : a.phrases) {
        CHECK(inside(p.span));
        CHECK(sure(p.confidence));
        CHECK_FALSE(p.evidence.empty());
    }
    for (const Switch& s : a.switches) {
        CHECK(s.from != s.to);
        CHECK(sure(s.confidence));
        CHECK_FALSE(s.evidence.empty());
    }
    const auto& c = a.curves;
    const std::size_t n = c.f0.size();
    for (const std::size_t size :
         {c.voicing.size(), c.loudness.size(), c.level.size(), c.cpp.size(), c.hnr.size(), c.h1h2.size(),
          c.ring.size(), c.alpha.size(), c.centroid.size(), c.f1.size(), c.f2.size(), c.f3.size(),
          c.head_register.size()})
        CHECK(size == n);
    for (const float v : c.voicing.raw())
        if (!std::isnan(v)) CHECK((v >= 0 && v <= 1));
    for (const float v : c.f0.raw())
        if (!std::isnan(v)) CHECK((v >= 50 && v <= 1450));
}

} // namespace

TEST_CASE(
    "every mark of a song lies inside it, is sure of itself between 0 and 1, and says what it rests on") {
    for (const auto voice : {singer::VoiceType::bass, singer::VoiceType::alto}) {
        well_formed(test::hear({.voice = voice, .seed = 501, .phrases = 3}).said);
        well_formed(test::hear({.voice = voice, .seed = 502, .phrases = 4, .two_registers = true}).said);
    }
}

TEST_CASE("silence holds no marks, however it is said to be recorded") {
    for (const auto how : {Accompaniment::find_out, Accompaniment::alone, Accompaniment::accompanied}) {
        CAPTURE(int(how));
        claims_nothing(test::listen_to(scenes::silence(Seconds(3), {44100}), {44100}, how));
    }
}

namespace {
void no_singing_in_noise(Accompaniment how) {
    const auto hiss = test::listen_to(scenes::noise(0.1, Seconds(4), {44100}, 9), {44100}, how);
    CHECK(hiss.notes.empty());
    CHECK(hiss.phrases.empty());
    CHECK(hiss.switches.empty());
}
} // namespace

TEST_CASE("nobody sings in white noise") {
    no_singing_in_noise(Accompaniment::alone);
}

TEST_CASE("nobody sings in white noise, nor does a band play there") {
    no_singing_in_noise(Accompaniment::find_out);
}

TEST_CASE("one sample, and a few, are heard without a fall") {
    CHECK_THROWS_AS(test::listen_to({0.5F}, {44100}), Error); // shorter than a sample at the ear's own rate
    for (const std::size_t n : {2u, 100u, 441u, 2000u}) {
        CAPTURE(n);
        const auto a = test::listen_to(std::vector<float>(n, 0.5F), {44100});
        CHECK(a.notes.empty());
        CHECK(a.duration.value() == Approx(static_cast<double>(n) / 44100));
        well_formed(a);
    }
}

TEST_CASE("a recording without a sample is refused with a reason") {
    try {
        (void)test::listen_to({}, {44100});
        FAIL("it was heard");
    } catch (const Error& e) {
        CHECK(e.fault() == Fault::unreadable);
        CHECK_FALSE(std::string(e.what()).empty());
    }
}

TEST_CASE("samples beyond full scale, and numbers that are none, do no harm") {
    auto x = scenes::sine(Hertz(220), 8, Seconds(1), {44100});
    well_formed(test::listen_to(x, {44100}));
    x[20000] = std::numeric_limits<float>::quiet_NaN();
    x[30000] = std::numeric_limits<float>::infinity();
    CHECK_NOTHROW(test::listen_to(x, {44100}));
}

TEST_CASE("the same singing at 8, 16, 48 and 96 kHz has the same notes") {
    singer::Song song;
    singer::Phrase line;
    line.events.emplace_back(singer::Rest{Seconds(0.3)});
    for (const double p : {57.0, 60.0, 64.0}) {
        line.events.emplace_back(singer::SungNote{.length = Seconds(0.8), .pitch = MidiPitch(p)});
        line.events.emplace_back(singer::Rest{Seconds(0.3)});
    }
    song.phrases.push_back(line);
    for (const int rate : {16000, 48000, 96000}) {
        CAPTURE(rate);
        const auto sung = singer::render(song, {}, SampleRate{rate});
        const auto said = test::listen_to(sung.samples, sung.rate);
        REQUIRE(said.notes.size() == 3);
        for (std::size_t i = 0; i < 3; ++i)
            CHECK(said.notes[i].pitch.value() == Approx(sung.truth.notes[i].pitch.value()).margin(0.1));
    }
    // 8 kHz: tones instead, since the singer starts at 16.
    std::vector<float> x;
    for (const double hz : {220.0, 330.0}) {
        scenes::append(
            x, scenes::faded(scenes::partial_tone([=](double) { return hz; }, [](int h) { return 0.2 / h; },
                                                  Seconds(1), {8000}, 3800),
                             {8000}));
        scenes::append(x, scenes::silence(Seconds(0.4), {8000}));
    }
    const auto said = test::listen_to(x, {8000});
    REQUIRE(said.notes.size() == 2);
    CHECK(said.notes[1].pitch.value() == Approx(pitch_of(Hertz(330)).value()).margin(0.05));
    well_formed(said);
}

TEST_CASE("hearing a source a second time gives the same to the last bit") {
    const auto sung = scenes::sing({.seed = 503, .phrases = 2});
    singer::MemorySource source(sung.samples, sung.rate);
    const Analysis first = listen(source), second = listen(source);
    REQUIRE(first.notes.size() == second.notes.size());
    for (std::size_t i = 0; i < first.notes.size(); ++i) {
        CHECK(first.notes[i].span == second.notes[i].span);
        CHECK(first.notes[i].pitch == second.notes[i].pitch);
        CHECK(first.notes[i].evidence == second.notes[i].evidence);
    }
    CHECK(first.breaths.size() == second.breaths.size());
    CHECK(std::ranges::equal(first.curves.f0.raw(), second.curves.f0.raw(),
                             [](float a, float b) { return a == b || (std::isnan(a) && std::isnan(b)); }));
}

TEST_CASE("listening stops when told to, and says how far it is until it is done") {
    const auto sung = scenes::sing({.seed = 504, .phrases = 2});
    singer::MemorySource source(sung.samples, sung.rate);
    std::vector<double> said;
    (void)listen(source, {}, Progress([&](double done, std::string_view) { said.push_back(done); }));
    REQUIRE(said.size() > 5);
    CHECK(std::ranges::is_sorted(said));
    CHECK(said.front() >= 0);
    CHECK(said.back() == Approx(1));
    for (const double at : {0.1, 0.7}) { // in either pass
        std::stop_source stop;
        double last = 0;
        const Progress progress(
            [&](double done, std::string_view) {
                last = done;
                if (done > at) stop.request_stop();
            },
            stop.get_token());
        CHECK_THROWS_AS(listen(source, {}, progress), Stopped);
        CHECK(last < at + 0.25);
    }
}
