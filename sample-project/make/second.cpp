#include "make/performances.h"

namespace luft::sample {

using namespace luft::singer;
using marks::LevelShape;
using marks::OffsetKind;
using marks::Register;

namespace {

/// What the alto does otherwise than the tenor. Lines and notes count from 0.
void shape(std::vector<Line>& lines, const Frame& frame) {
    const VibratoPlan even{.rate = Hertz(6.0), .extent = Cents(45), .delay = Seconds(0.3), .unrest = 0.03};

    // 1 and 2 in one breath: "home" is held, straight, and sung on into "evening", which is in head register.
    lines[0].goes_on = true;
    note(lines[1], 0).start = Start::legato;
    note(lines[1], 0).sung_in = note(lines[1], 1).sung_in = Register::head;
    note(lines[1], 6).vibrato = even;
    lines[1].breath = singer::Breath{Seconds(0.45), Decibels(-15)};

    // 3: the switch is covered; "bay" is sung as a turn, in head register.
    for (const std::size_t k : {2u, 3u, 4u, 6u})
        note(lines[2], k).sung_in = Register::head;
    note(lines[2], 6).vibrato = even;
    turn(lines[2], 6, 2, 2, frame);
    lines[2].breath = singer::Breath{Seconds(0.27), Decibels(-40)}; // under the band

    // 4: balanced where the tenor starts hard; the end fades.
    note(lines[3], 6).end = OffsetKind::trailing;
    lines[3].breath = singer::Breath{Seconds(0.60), Decibels(-17)};

    // 5: breathy start; a breath splits "ropes" from "are".
    note(lines[4], 0).start = Start::breathy;
    note(lines[4], 3).start = Start::balanced;
    breathe_after(lines[4], 2, 0.5, {Seconds(0.24), Decibels(-13)}, frame);
    note(lines[4], 6).vibrato = even;
    lines[4].breath = singer::Breath{Seconds(0.27), Decibels(-15)};

    // 6: hard start; decrescendo on "-low".
    note(lines[5], 0).start = Start::glottal;
    note(lines[5], 6).path = {LevelShape::fading, Decibels(8)};
    note(lines[5], 6).end = OffsetKind::breathy;
    lines[5].breath = singer::Breath{.length = Seconds(0.45), .silent = true};

    // 7: sung through; the top note is sharp, wide vibrato on "shine".
    for (const std::size_t k : {1u, 2u, 3u, 4u, 6u})
        note(lines[6], k).sung_in = Register::head;
    note(lines[6], 2).off = Cents(26);
    note(lines[6], 6).vibrato = VibratoPlan{.rate = Hertz(6.2), .extent = Cents(90), .delay = Seconds(0.15)};
    lines[6].breath = singer::Breath{Seconds(0.27), Decibels(-14)};

    // 8: glottal start; the last note straight and sinking a little.
    note(lines[7], 0).start = Start::glottal;
    note(lines[7], 6).drift = Cents(-30);
    note(lines[7], 6).end = OffsetKind::trailing;
}

} // namespace

Performance second_performance() {
    Performance p;
    p.name = "over-water-marnik";
    p.performer = "Pella Marnik";
    p.ending = "mkv";
    p.frame = {MidiPitch(60), Seconds(60.0 / 96)};
    auto lines = plain_lines(p.frame);
    shape(lines, p.frame);
    p.song = whole(std::move(lines), p.frame, {Seconds(0.50), Decibels(-15)});
    p.singer = {.voice = VoiceType::alto, .rd_chest = 1.05, .rd_head = 2.3, .tuning = Hertz(440), .seed = 96};
    p.room = {.decay = Seconds(0.8), .wet = Decibels(-18), .floor = Decibels(-70)};
    p.band = {.harmony = Instrument::struck, .drums = true, .beat = p.frame.beat};
    p.voice_over_band = Decibels(7);
    p.frame_rate = Rational(30000, 1001);
    p.looks = {.sky_high = {0.20, 0.17, 0.32},
               .sky_low = {0.62, 0.50, 0.58},
               .coat = {0.55, 0.25, 0.27},
               .skin = {0.72, 0.52, 0.40},
               .hair = {0.10, 0.09, 0.12},
               .long_hair = true};
    return p;
}

} // namespace luft::sample
