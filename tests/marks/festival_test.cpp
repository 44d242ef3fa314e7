// Debian's festival speech synthesizer sings a score in its singing mode; the ear must find that score.
// Command and mark-up as the package's own singing-mode.scm has them: text2wave -mode singing; elements
// SINGING, PITCH (NOTE), DURATION (SECONDS) and REST; its A5 is 440 Hz, so that its octaves are numbered one
// higher than ours.
#include "base/text.h"
#include "marks/heard.h"
#include "signal/statistics.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cstdint>
#include <cstring>
#include <filesystem>

using namespace luft;
using namespace luft::marks;
using namespace luft::test;

namespace {

struct ScoreNote {
    int midi; ///< 0 = rest
    double seconds;
    const char* syllable;
};

std::string festival_name(int midi) {
    static constexpr std::array<const char*, 12> kNames{"C",  "C#", "D",  "D#", "E",  "F",
                                                        "F#", "G",  "G#", "A",  "A#", "B"};
    return kNames[static_cast<std::size_t>(midi % 12)] + std::to_string(midi / 12);
}

struct Sound {
    std::vector<float> samples;
    SampleRate rate;
};

/// A plain reader of what festival writes: RIFF, one channel of 16 bits.
Sound read_wave(const std::filesystem::path& file) {
    const std::string bytes = read_all(file);
    REQUIRE(bytes.size() > 44);
    REQUIRE(bytes.substr(0, 4) == "RIFF");
    Sound s;
    for (std::size_t at = 12; at + 8 <= bytes.size();) {
        std::uint32_t size = 0;
        std::memcpy(&size, bytes.data() + at + 4, 4);
        const std::string kind = bytes.substr(at, 4);
        if (kind == "fmt ") {
            std::uint32_t rate = 0;
            std::uint16_t channels = 0, bits = 0;
            std::memcpy(&channels, bytes.data() + at + 10, 2);
            std::memcpy(&rate, bytes.data() + at + 12, 4);
            std::memcpy(&bits, bytes.data() + at + 22, 2);
            REQUIRE(channels == 1);
            REQUIRE(bits == 16);
            s.rate = {static_cast<int>(rate)};
        } else if (kind == "data") {
            const std::size_t count = std::min<std::size_t>(size, bytes.size() - at - 8) / 2;
            for (std::size_t i = 0; i < count; ++i) {
                std::int16_t v = 0;
                std::memcpy(&v, bytes.data() + at + 8 + 2 * i, 2);
                s.samples.push_back(static_cast<float>(v) / 32768);
            }
        }
        at += 8 + size + size % 2;
    }
    return s;
}

Sound festival_sings(const std::vector<ScoreNote>& score) {
    const Folder folder;
    std::string xml =
        "<?xml version=\"1.0\"?>\n<!DOCTYPE SINGING PUBLIC \"-//SINGING//DTD SINGING mark up//EN\" "
        "\"Singing.v0_1.dtd\" []>\n<SINGING BPM=\"60\">\n";
    for (const ScoreNote& n : score)
        xml += n.midi == 0 ? "<REST SECONDS=\"" + fixed(n.seconds, 2) + "\"></REST>\n"
                           : "<PITCH NOTE=\"" + festival_name(n.midi) + "\"><DURATION SECONDS=\"" +
                                 fixed(n.seconds, 2) + "\">" + n.syllable + "</DURATION></PITCH>\n";
    write_all(folder / "score.xml", xml + "</SINGING>\n");
    INFO("the Debian packages festival and festvox-kallpc16k are needed");
    run("text2wave -mode singing " + quoted(folder / "score.xml") + " -o " + quoted(folder / "sung.wav"));
    return read_wave(folder / "sung.wav");
}

} // namespace

// Pitch within a quarter tone, place within 0.2 s.
TEST_CASE("the notes that festival sings are found") {
    // An invented tune in A minor.
    const std::vector<ScoreNote> score{{57, 0.8, "low"}, {60, 0.8, "moon"}, {64, 0.8, "more"}, {0, 0.5, ""},
                                       {62, 0.6, "new"}, {59, 0.6, "low"},  {57, 1.2, "you"}};
    const Sound sound = festival_sings(score);
    const auto said = marks::test::listen_to(sound.samples, sound.rate, Accompaniment::alone);
    double at = 0;
    std::vector<reference::TimedNote> truth;
    for (const ScoreNote& n : score) {
        if (n.midi != 0) {
            truth.push_back({at, at + n.seconds, frequency_of(MidiPitch(n.midi)).value()});
            // Every middle of a note is heard at its pitch. Festival glides for a fifth of each.
            const auto middle =
                said.curves.f0.within({Seconds(at + 0.3 * n.seconds), Seconds(at + 0.75 * n.seconds)});
            const auto hz = signal::median(middle);
            CAPTURE(n.syllable, at);
            REQUIRE(hz);
            CHECK(interval(Hertz(truth.back().hz), Hertz(*hz)).value() == Approx(0).margin(25));
        }
        at += n.seconds;
    }
    CHECK(said.duration.value() == Approx(at).margin(0.3));
    const auto found =
        reference::score_notes(truth, marks::test::timed(said.notes), reference::NoteRule::onset_pitch, 0.2);
    CAPTURE(found.hits, found.said);
    CHECK(found.hits == 6);
    CHECK(found.said <= 12); // its glides and diphthongs make some notes of their own: 11 measured
}
