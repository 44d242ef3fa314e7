// Sampled instruments: fluidsynth plays Debian's small General MIDI soundfont.
#pragma once

#include "bench/midi_file.h"
#include "singer/band.h"

namespace luft::bench {

/// Plays the notes without reverberation and chorus. Throws Error(not_found) when the packages fluidsynth and
/// timgm6mb-soundfont aren't there.
singer::Stereo play_sampled(const std::vector<MidiChannel>& channels, const std::vector<MidiNote>& notes,
                            Seconds length, SampleRate rate);

/// The tones of one of our bands on sampled instruments, other ones for each seed.
singer::Stereo play_sampled(std::span<const singer::Tone> tones, Seconds length, SampleRate rate,
                            std::uint64_t seed);

} // namespace luft::bench
