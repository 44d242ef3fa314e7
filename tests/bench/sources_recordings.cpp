// Recordings with labels by hand. The project holds none: the folder is named on the command line.
#include "base/error.h"
#include "bench/groups.h"
#include "bench/labels.h"
#include "bench/place.h"
#include "bench/truth.h"

#include <filesystem>

namespace luft::bench {
namespace {

namespace fs = std::filesystem;

std::optional<fs::path> audio_in(const fs::path& folder) {
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.is_regular_file() && entry.path().stem() == "audio") return entry.path();
    return std::nullopt;
}

Scene recorded(const fs::path& folder, const fs::path& audio) {
    Sound sound = read_sound(audio);
    Scene s;
    s.channels = sound.channels, s.rate = sound.rate;
    s.samples = std::move(sound.samples);
    if (fs::exists(folder / "events.csv")) s.truth = events_of(folder / "events.csv");
    if (fs::exists(folder / "f0.csv")) s.truth.pitch = pitch_of(folder / "f0.csv", s.length());
    if (s.truth.phrases) s.truth.instrumental = instrumental_stretches(*s.truth.phrases, s.length());
    return s;
}

} // namespace

std::vector<Group> recorded_groups(const std::string& folder) {
    if (!fs::is_directory(folder)) throw Error(Fault::not_found, "There is no folder " + folder + ".");
    std::vector<fs::path> folders;
    for (const auto& entry : fs::recursive_directory_iterator(folder))
        if (entry.is_directory() &&
            (fs::exists(entry.path() / "events.csv") || fs::exists(entry.path() / "f0.csv")))
            folders.push_back(entry.path());
    std::ranges::sort(folders);
    std::vector<Group> out;
    for (const fs::path& f : folders) {
        const auto audio = audio_in(f);
        if (!audio) throw Error(Fault::not_found, "There are labels but no audio.* in " + f.string() + ".");
        const bool band = f.filename().string().find("band") != std::string::npos;
        out.push_back({f.filename().string(), "a recording with labels by hand",
                       band ? Kind::among_instruments : Kind::solo,
                       [f, audio = *audio](std::uint64_t) { return recorded(f, audio); }});
    }
    if (out.empty()) throw Error(Fault::not_found, "There are no labelled recordings in " + folder + ".");
    return out;
}

} // namespace luft::bench
