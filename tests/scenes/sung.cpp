#include "scenes/sung.h"

#include "tools/files.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

using namespace luft::test;

namespace luft::scenes {
namespace {

constexpr SampleRate kRate{44100};

void put(std::string& bytes, std::uint32_t value, int count) {
    for (int i = 0; i < count; ++i)
        bytes += static_cast<char>(value >> (8 * i) & 0xFF);
}

/// RIFF WAVE with PCM, little-endian, as its specification (Microsoft and IBM, 1991) lays it out.
std::string wav(const std::vector<float>& samples, SampleRate rate) {
    const auto size = static_cast<std::uint32_t>(samples.size() * 2);
    const auto per_second = static_cast<std::uint32_t>(rate.per_second);
    std::string bytes = "RIFF";
    put(bytes, 36 + size, 4);
    bytes += "WAVEfmt ";
    put(bytes, 16, 4);
    put(bytes, 1, 2); // PCM
    put(bytes, 1, 2); // channels
    put(bytes, per_second, 4);
    put(bytes, per_second * 2, 4);
    put(bytes, 2, 2);  // bytes a frame
    put(bytes, 16, 2); // bits
    bytes += "data";
    put(bytes, size, 4);
    for (const float sample : samples)
        put(bytes, static_cast<std::uint32_t>(std::lround(std::clamp(sample, -1.0F, 1.0F) * 32767)), 2);
    return bytes;
}

singer::Phrase line(int low) {
    using namespace singer;
    Phrase phrase;
    phrase.events.push_back(singer::Breath{Seconds(0.5)});
    const int steps[] = {0, 2, 4, 2};
    for (int i = 0; i < 4; ++i) {
        SungNote note;
        note.length = Seconds(i == 3 ? 1.2 : 0.7);
        note.pitch = MidiPitch(low + steps[i]);
        note.start = i == 0 ? Start::balanced : Start::legato;
        phrase.events.push_back(note);
    }
    phrase.events.push_back(Rest{Seconds(0.2)});
    return phrase;
}

} // namespace

singer::Song three_lines(int times) {
    singer::Song song;
    for (int i = 0; i < times; ++i)
        for (const int low : {52, 54, 50})
            song.phrases.push_back(line(low));
    return song;
}

singer::Truth write_sung(const singer::Song& song, const std::filesystem::path& file) {
    const singer::Rendition sung = singer::render(song, singer::Singer{}, kRate);
    write_all(file, wav(sung.samples, sung.rate));
    return sung.truth;
}

} // namespace luft::scenes
