// The test voice, whole. Everything that it sings is known, so that what the ear finds can be checked against
// it.
//
//     using namespace luft::singer;
//     Song song;
//     song.phrases.push_back({{Breath{},
//                              SungNote{.length = Seconds(0.8), .pitch = MidiPitch(57), .start =
//                              Start::glottal}, SungNote{.length = Seconds(1.2), .pitch = MidiPitch(60),
//                              .vowel = Vowel::o,
//                                       .start = Start::legato, .end = marks::OffsetKind::trailing,
//                                       .vibrato = VibratoPlan{.rate = Hertz(5.5), .extent = Cents(60)}},
//                              Rest{}},
//                             "so long"});
//     const Rendition sung = render(song, Singer{.voice = VoiceType::tenor}, SampleRate{44100});
//     MemorySource source(sung.samples, sung.rate);   // what marks::listen reads
//     sung.truth.f0.at(Seconds(0.9));                 // pitch as sung, none where nobody sings
//     sung.truth.notes[1].vibrato, sung.truth.breaths[0].span, sung.truth.switches, ...
//
// room.h puts it into a room with a noise floor, band.h plays instruments under it.
// Length of a note includes its consonant, onset noise and offset noise: see TrueNote::span for what is
// voiced.
#pragma once

#include "singer/memory_source.h"
#include "singer/render.h"
