// What is sung for the benchmark of aligning: the same tune by several voices, each with the place of every
// note.
#pragma once

#include "bench/groups.h"
#include "bench/pairs/warp.h"
#include "bench/tune.h"
#include "singer/voices.h"

#include <filesystem>

namespace luft::bench {

/// Some sound and where its notes begin; the same index is the same note in every singing of one tune.
struct Singing {
    std::vector<float> samples; ///< interleaved
    int channels = 1;
    SampleRate rate{44100};
    std::vector<Span> notes;

    [[nodiscard]] Seconds length() const {
        return Seconds(static_cast<double>(samples.size()) / channels / rate.per_second);
    }
};

Singing singing_of(Scene scene);

/// Warped along the map and moved by semitones, its notes with it.
Singing warped(const Singing& sung, const TimeMap& map, int semitones);

/// The tune in another tempo and key.
Tune retold(const Tune& tune, const TimeMap& map, int semitones);

/// The project's own test voice sings the tune, each phrase in one breath; it breathes where the rests before
/// a phrase leave it the time.
Singing sung_by_us(const Tune& tune, singer::VoiceType voice, std::uint64_t seed);

/// The invented song of that seed, as it is, or in another tempo, key and voice; over a band of its own,
/// which goes by `band`, 6 dB under the voice.
struct SongManner {
    TimeMap map;
    int semitones = 0;
    std::optional<singer::VoiceType> voice = {};
    std::uint64_t seed = 1; ///< of the voice
    std::optional<std::uint64_t> band = {};
};
Singing sung_song(std::uint64_t seed, const SongManner& how);

} // namespace luft::bench
