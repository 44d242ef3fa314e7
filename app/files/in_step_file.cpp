#include "files/in_step_file.h"

#include "base/text.h"
#include "media/movie_writer.h"
#include "signal/stretch.h"
#include "tape/stereo_resampler.h"
#include "together/in_step.h"

#include <optional>

namespace luft::files {
namespace {

constexpr int kSoundKbps = 192; // as in the guide movie

together::Recording recording(const project::Project& project, const project::Performance& performance,
                              const Progress& progress) {
    const auto listening = project.listening(performance.id);
    return {media::open_playable_sound(project.media(performance, false, {}, progress)),
            listening ? listening->loudness.integrated : std::nullopt};
}

/// From the sound as it is made to the file: slowed, at a rate that the file takes.
class Way {
  public:
    Way(media::MovieWriter& writer, SampleRate made, SampleRate written, double speed)
        : writer_(writer), written_(written), resampler_(made, written) {
        if (speed < 1) stretcher_.emplace(made, 2, speed);
    }

    void put(std::span<const float> stereo) {
        if (!stretcher_) return hand_on(stereo);
        slowed_.clear();
        stretcher_->process(stereo, slowed_);
        hand_on(slowed_);
    }

    /// How long the file has become.
    Seconds finish() {
        slowed_.clear();
        if (stretcher_) stretcher_->finish(slowed_);
        hand_on(slowed_);
        out_.clear();
        resampler_.finish(out_);
        write();
        writer_.finish();
        return Seconds(static_cast<double>(frames_) / written_.per_second);
    }

  private:
    void hand_on(std::span<const float> stereo) {
        out_.clear();
        resampler_.process(stereo, out_);
        write();
    }

    void write() {
        writer_.sound(out_);
        frames_ += out_.size() / 2;
    }

    media::MovieWriter& writer_;
    SampleRate written_;
    std::optional<signal::Stretcher> stretcher_;
    tape::StereoResampler resampler_;
    std::vector<float> slowed_, out_;
    std::size_t frames_ = 0;
};

} // namespace

std::unique_ptr<media::PlayableSound>
open_in_step(const project::Project& project, const project::Performance& a, const project::Performance& b,
             const compare::Alignment& alignment, bool transposed, const Progress& progress) {
    return std::make_unique<together::InStep>(recording(project, a, progress),
                                              recording(project, b, progress), alignment, transposed);
}

Seconds write_in_step(const project::Project& project, const compare::Comparison& compared,
                      const std::filesystem::path& file, const InStepOptions& options,
                      const Progress& progress) {
    const auto sound =
        open_in_step(project, compared.a, compared.b, compared.alignment, options.transposed, progress);
    const SampleRate made = sound->format().rate, written = media::movie_rate(file, made);
    const auto writer = media::write_movie(
        file, {.sample_rate = written, .channels = 2, .audio_kbps = kSoundKbps, .reproducible = false});
    Way way(*writer, made, written, options.speed);
    const double whole = std::max(sound->expected_duration().value_or(Seconds(0)).value(), 1.0);
    while (const auto block = sound->read()) {
        const Seconds now(static_cast<double>(block->first) / made.per_second);
        progress.step(std::min(now.value() / whole, 1.0), "writing " + clock_text(now));
        way.put(block->samples);
    }
    return way.finish();
}

} // namespace luft::files
