#include "make/performances.h"

namespace luft::sample {

using namespace luft::singer;
using marks::LevelShape;
using marks::OffsetKind;
using marks::Register;

namespace {

/// What the tenor does well, does otherwise, and does wrong. Lines and notes count from 0.
void shape(std::vector<Line>& lines, const Frame& frame) {
    const VibratoPlan even{.rate = Hertz(5.4), .extent = Cents(55), .delay = Seconds(0.25), .unrest = 0.02};

    // 1 "Over water boats come home,": starts on air, ends with an even vibrato.
    note(lines[0], 0).start = Start::breathy;
    note(lines[0], 6).vibrato = even;
    lines[0].breath = singer::Breath{Seconds(0.30), Decibels(-15)};

    // 2 "evening in a coat of foam;": the held last note sits flat, and air follows it.
    note(lines[1], 6).off = Cents(-38);
    note(lines[1], 6).end = OffsetKind::breathy;
    lines[1].breath = singer::Breath{Seconds(0.45), Decibels(-40)}; // under the band

    // 3 "one long moon above the bay": cracks into head register on "moon", returns smoothly; a crescendo.
    note(lines[2], 2).sung_in = note(lines[2], 3).sung_in = Register::head;
    note(lines[2], 2).broken_switch = true;
    note(lines[2], 2).level -= Decibels(2);
    VibratoPlan late = even;
    late.delay = Seconds(0.55);
    note(lines[2], 6).vibrato = late;
    note(lines[2], 6).path = {LevelShape::growing, Decibels(9)};
    lines[2].breath = singer::Breath{Seconds(0.30), Decibels(-14)};

    // 4 "and the wind has gone away.": a hard start.
    note(lines[3], 0).start = Start::glottal;
    note(lines[3], 6).vibrato = even;
    lines[3].breath = singer::Breath{Seconds(0.60), Decibels(-18)};

    // 5 "All the ropes are lying slow,": hard again, and "ropes" is scooped into.
    note(lines[4], 0).start = Start::glottal;
    note(lines[4], 2).scoop = Cents(180);
    lines[4].breath = singer::Breath{.length = Seconds(0.30), .silent = true};

    // 6 "every oar is laid below;": the phrase end fades away and sinks.
    note(lines[5], 0).start = Start::breathy;
    note(lines[5], 6).end = OffsetKind::trailing;
    lines[5].breath = singer::Breath{Seconds(0.45), Decibels(-16)};

    // 7 "up the hill, the windows shine,": head register, and the line is broken for a breath after "hill".
    for (const std::size_t k : {1u, 2u, 3u, 6u})
        note(lines[6], k).sung_in = Register::head;
    note(lines[6], 2).end = OffsetKind::clean;
    note(lines[6], 3).start = Start::balanced;
    note(lines[6], 6).vibrato =
        VibratoPlan{.rate = Hertz(5.0), .extent = Cents(70), .delay = Seconds(0.2), .unrest = 0.25};
    note(lines[6], 6).end = OffsetKind::breathy;
    breathe_after(lines[6], 2, 0.55, {Seconds(0.28), Decibels(-13)}, frame);
    lines[6].breath = singer::Breath{Seconds(0.30), Decibels(-40)}; // under the band

    // 8 "and the nearest one is mine.": a swell on the last note.
    note(lines[7], 6).vibrato = even;
    note(lines[7], 6).path = {LevelShape::swelling, Decibels(7)};
}

} // namespace

Performance first_performance() {
    Performance p;
    p.name = "over-water-vasslow";
    p.performer = "Orrin Vasslow";
    p.ending = "mp4";
    p.frame = {MidiPitch(57), Seconds(60.0 / 84)};
    auto lines = plain_lines(p.frame);
    shape(lines, p.frame);
    p.song = whole(std::move(lines), p.frame, {Seconds(0.55), Decibels(-16)});
    p.singer = {
        .voice = VoiceType::tenor, .rd_chest = 0.95, .rd_head = 2.2, .tuning = Hertz(440), .seed = 84};
    p.room = {.decay = Seconds(1.1), .wet = Decibels(-17), .floor = Decibels(-70)};
    p.band = {.harmony = Instrument::plucked, .drums = false, .beat = p.frame.beat};
    p.voice_over_band = Decibels(9);
    p.frame_rate = Rational(25);
    p.looks = {.sky_high = {0.16, 0.22, 0.36},
               .sky_low = {0.85, 0.56, 0.42},
               .coat = {0.22, 0.36, 0.38},
               .skin = {0.87, 0.69, 0.56},
               .hair = {0.25, 0.17, 0.12},
               .long_hair = false};
    return p;
}

} // namespace luft::sample
