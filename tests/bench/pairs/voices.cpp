#include "bench/pairs/voices.h"

#include "bench/bands.h"
#include "bench/songs.h"
#include "singer/singer.h"

#include <variant>

namespace luft::bench {
namespace {

constexpr SampleRate kRate{44100};
constexpr Decibels kOverBand{6};

std::vector<Span> spans_of(const singer::Truth& truth) {
    std::vector<Span> out;
    for (const singer::TrueNote& n : truth.notes)
        out.push_back(n.span);
    return out;
}

Seconds& length_of(singer::Event& event) {
    return std::visit([](auto& e) -> Seconds& { return e.length; }, event);
}

} // namespace

Singing singing_of(Scene scene) {
    Singing out{std::move(scene.samples), scene.channels, scene.rate, {}};
    if (scene.truth.notes)
        for (const TrueNote& n : *scene.truth.notes)
            out.notes.push_back(n.span);
    return out;
}

Singing warped(const Singing& sung, const TimeMap& map, int semitones) {
    Singing out{warped(sung.samples, sung.channels, sung.rate, map, semitones), sung.channels, sung.rate, {}};
    for (const Span& n : sung.notes)
        out.notes.push_back({map(n.start), map(n.end)});
    return out;
}

Tune retold(const Tune& tune, const TimeMap& map, int semitones) {
    Tune out = tune;
    for (TuneNote& n : out.notes)
        n.key += semitones, n.span = {map(n.span.start), map(n.span.end)};
    for (Span& p : out.phrases)
        p = {map(p.start), map(p.end)};
    return out;
}

Singing sung_by_us(const Tune& tune, singer::VoiceType voice, std::uint64_t seed) {
    constexpr Seconds kBreath{0.3}; // silence is left beside it
    singer::Random random(seed * 77 + 1);
    singer::Song song;
    Seconds now{0};
    std::size_t note = 0;
    for (const Span& p : tune.phrases) {
        singer::Phrase phrase;
        const bool breathes = p.start - now > kBreath + Seconds(0.08);
        const Seconds breath = breathes ? kBreath : Seconds(0);
        phrase.events.emplace_back(singer::Rest{p.start - now - breath});
        if (breathes) phrase.events.emplace_back(singer::Breath{breath, Decibels(-28)});
        now = p.start;
        for (; note < tune.notes.size() && tune.notes[note].span.start < p.end; ++note) {
            const TuneNote& n = tune.notes[note];
            singer::SungNote sung;
            sung.length = n.span.end - now; // a gap within a line is sung through
            sung.pitch = MidiPitch(n.key);
            sung.vowel = static_cast<singer::Vowel>(static_cast<int>(random.uniform() * 5));
            sung.off = Cents(10 * random.bell());
            sung.start = now == p.start ? singer::Start::balanced : singer::Start::legato;
            if (sung.length > Seconds(0.85)) sung.vibrato = singer::VibratoPlan{};
            phrase.events.emplace_back(sung);
            now = n.span.end;
        }
        song.phrases.push_back(std::move(phrase));
    }
    const auto made = singer::render(song, {.voice = voice, .seed = seed}, kRate);
    return {made.samples, 1, kRate, spans_of(made.truth)};
}

Singing sung_song(std::uint64_t seed, const SongManner& how) {
    InventedSong plan = invent(seed, Form::plain);
    if (how.voice) plan.singer.voice = *how.voice;
    plan.singer.seed = how.seed;
    plan.key.lowest += how.semitones;
    Seconds before{0};
    for (singer::Phrase& phrase : plan.song.phrases)
        for (singer::Event& e : phrase.events) {
            const Seconds old = length_of(e), now = how.map(before + old) - how.map(before);
            before += old;
            length_of(e) = now;
            if (auto* n = std::get_if<singer::SungNote>(&e)) {
                n->pitch += MidiPitch(how.semitones);
                if (n->flip) n->flip->after = n->flip->after * (now / old);
            }
        }
    const auto made = singer::render(plan.song, plan.singer, kRate);
    Singing out{made.samples, 1, kRate, spans_of(made.truth)};
    if (!how.band) return out;
    const Seconds length = made.truth.duration;
    out.samples = singer::mix(made.samples,
                              singer::play(arrange(plan, *how.band, length, {}), length, kRate, *how.band),
                              kOverBand, kRate);
    out.channels = 2;
    return out;
}

} // namespace luft::bench
