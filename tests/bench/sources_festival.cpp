// Debian's festival sings invented tunes. What it knows of itself: its score. It glides for a fifth of each
// note, so the pitch is known in the middle of notes only; it never breathes; its syllables begin with voiced
// sounds, so that notes start where the score has them.
#include "base/text.h"
#include "base/write_file.h"
#include "bench/groups.h"
#include "bench/place.h"
#include "bench/songs.h"
#include "bench/tune.h"
#include "signal/resampler.h"

namespace luft::bench {
namespace {

constexpr std::array kSyllables{"low", "moon", "more", "new", "may", "knee",
                                "lie", "row",  "now",  "you", "lay", "mine"};

/// Its A5 is 440 Hz: octaves are numbered one higher than ours.
std::string festival_name(int midi) {
    static constexpr std::array<const char*, 12> kNames{"C",  "C#", "D",  "D#", "E",  "F",
                                                        "F#", "G",  "G#", "A",  "A#", "B"};
    return kNames[static_cast<std::size_t>(midi % 12)] + std::to_string(midi / 12);
}

/// Mark-up as the package's own singing-mode.scm has it.
std::string score_of(const Tune& tune) {
    std::string xml =
        "<?xml version=\"1.0\"?>\n<!DOCTYPE SINGING PUBLIC \"-//SINGING//DTD SINGING mark up//EN\" "
        "\"Singing.v0_1.dtd\" []>\n<SINGING BPM=\"60\">\n";
    Seconds now{0};
    for (std::size_t i = 0; i < tune.notes.size(); ++i) {
        const TuneNote& n = tune.notes[i];
        if (n.span.start > now)
            xml += "<REST SECONDS=\"" + fixed((n.span.start - now).value(), 3) + "\"></REST>\n";
        xml += "<PITCH NOTE=\"" + festival_name(n.key) + "\"><DURATION SECONDS=\"" +
               fixed(n.span.length().value(), 3) + "\">" +
               kSyllables[(i * 5 + static_cast<std::size_t>(n.key)) % kSyllables.size()] +
               "</DURATION></PITCH>\n";
        now = n.span.end;
    }
    return xml + "</SINGING>\n";
}

} // namespace

Scene sung_by_festival(const Tune& tune) {
    const Place place;
    const auto score = place.path() / "score.xml", sound = place.path() / "sung.wav";
    write_file(score, score_of(tune));
    run("text2wave -mode singing '" + score.string() + "' -o '" + sound.string() + "'");
    const Sound sung = read_sound(sound);
    Scene s;
    signal::Resampler resampler(sung.rate, s.rate);
    resampler.process(sung.samples, s.samples);
    resampler.finish(s.samples);
    s.truth = truth_of(tune, s.length(), {.settles = 0.3, .leaves = 0.75, .rings_on = Seconds(0.1)});
    return s;
}

Group festival_group() {
    return {"festival", "Debian's festival sings invented tunes; it never breathes", Kind::solo,
            [](std::uint64_t seed) { return sung_by_festival(tune_for(seed, 45, 62)); }};
}

} // namespace luft::bench
