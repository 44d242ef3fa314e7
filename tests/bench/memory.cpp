#include "base/error.h"
#include "base/text.h"
#include "bench/groups.h"
#include "bench/place.h"
#include "bench/speed.h"
#include "marks/listen.h"
#include "media/movie_writer.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>

namespace luft::bench {
namespace {

/// A scene over and over.
class Loop final : public SampleSource {
  public:
    Loop(std::vector<float> round, SampleRate rate, Seconds length)
        : round_(std::move(round)), length_(length) {
        format_.rate = rate;
        format_.channels = {ChannelRole::left, ChannelRole::right};
        frames_ = static_cast<std::int64_t>(length.value() * rate.per_second);
    }
    [[nodiscard]] const AudioFormat& format() const override { return format_; }
    [[nodiscard]] std::optional<AudioBlock> read() override {
        const auto round = static_cast<std::int64_t>(round_.size() / 2);
        const std::int64_t at = next_ % round;
        const std::int64_t count = std::min({std::int64_t{4096}, round - at, frames_ - next_});
        if (count <= 0) return std::nullopt;
        const AudioBlock block{next_,
                               std::span<const float>(round_).subspan(static_cast<std::size_t>(2 * at),
                                                                      static_cast<std::size_t>(2 * count))};
        next_ += count;
        return block;
    }
    void rewind() override { next_ = 0; }
    [[nodiscard]] std::optional<Seconds> expected_duration() const override { return length_; }

  private:
    std::vector<float> round_;
    Seconds length_;
    AudioFormat format_;
    std::int64_t frames_ = 0, next_ = 0;
};

/// Of this process alone: getrusage would count what it was forked from.
double peak_megabytes() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with("VmHWM:")) return std::strtod(line.c_str() + 6, nullptr) * 1024 / 1e6;
    throw Error(Fault::internal, "The system doesn't tell a process's peak memory.");
}

} // namespace

void listen_for(Seconds length, const std::filesystem::path& round) {
    Sound sound = read_sound(round);
    const double held = static_cast<double>(sound.samples.size() * sizeof(float)) / 1e6;
    Loop loop(std::move(sound.samples), sound.rate, length);
    const auto said = marks::listen(loop, {.accompaniment = marks::Accompaniment::accompanied});
    if (said.notes.empty()) throw Error(Fault::internal, "Nothing was heard in an hour of singing.");
    std::printf("%s\n", fixed(peak_megabytes() - held, 1).c_str());
}

double measure_memory(const std::string& program, Seconds length) {
    const Place place;
    const auto round = place.path() / "round.wav";
    const Scene scene = long_scene(true, Seconds(22));
    const auto writer = media::write_movie(round, {.sample_rate = scene.rate, .channels = scene.channels});
    writer->sound(scene.samples);
    writer->finish();
    const std::string command = "exec '" + program + "' --listen-for " + fixed(length.value(), 0) +
                                " --round '" + round.string() + "'";
    FILE* pipe = ::popen(command.c_str(), "r");
    double peak = 0;
    const bool read = pipe && std::fscanf(pipe, "%lf", &peak) == 1;
    if (!pipe || ::pclose(pipe) != 0 || !read)
        throw Error(Fault::internal, "The memory could not be measured.");
    return peak;
}

} // namespace luft::bench
