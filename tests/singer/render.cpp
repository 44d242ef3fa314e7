#include "singer/render.h"

#include "base/error.h"
#include "singer/control.h"
#include "singer/noises.h"
#include "singer/source.h"
#include "singer/truth_of.h"

#include <algorithm>
#include <cmath>

namespace luft::singer {
namespace {

/// Controls between their milliseconds.
class Between {
  public:
    explicit Between(const std::vector<Control>& controls) : controls_(controls) {}

    void go_to(double t) {
        const double x = t / kControlStep.value();
        at_ = std::min(static_cast<std::size_t>(x), controls_.size() - 2);
        part_ = std::clamp(x - static_cast<double>(at_), 0.0, 1.0);
    }
    [[nodiscard]] double of(double Control::*field) const {
        const double a = controls_[at_].*field, b = controls_[at_ + 1].*field;
        return a + (b - a) * part_;
    }
    [[nodiscard]] const Formants& formants() const { return controls_[at_].formants; }

  private:
    const std::vector<Control>& controls_;
    std::size_t at_ = 0;
    double part_ = 0;
};

void add(std::vector<float>& to, const std::vector<float>& sound, Seconds from, SampleRate rate) {
    const auto first = static_cast<std::size_t>(std::llround(from.value() * rate.per_second));
    for (std::size_t n = 0; n < sound.size() && first + n < to.size(); ++n)
        to[first + n] += sound[n];
}

void sing(std::vector<float>& out, const std::vector<Control>& controls, SampleRate rate, Random random) {
    Between control(controls);
    const auto source = pulse_train(out.size(), rate, random.fork(), [&](Seconds t) {
        control.go_to(t.value());
        return CycleShape{frequency_of(MidiPitch(control.of(&Control::pitch))), control.of(&Control::rd),
                          control.of(&Control::jitter), control.of(&Control::shimmer)};
    });
    Tract tract(rate);
    Random noise = random.fork();
    const std::size_t retune = static_cast<std::size_t>(rate.per_second / 1000);
    for (std::size_t n = 0; n < out.size(); ++n) {
        control.go_to(static_cast<double>(n) / rate.per_second);
        if (n % retune == 0) tract.shape(control.formants());
        const double voicing = control.of(&Control::voicing);
        // While the folds swing, noise comes in puffs with the flow; the factors keep its power.
        const double puffs = 1 - voicing + voicing * (0.35 + 1.05 * double(source.opening[n]));
        const double x = control.of(&Control::voice) * double(source.flow[n]) +
                         control.of(&Control::noise) * puffs * noise.bell();
        out[n] = static_cast<float>(tract.run(x));
    }
}

} // namespace

Rendition render(const Song& song, const Singer& singer, SampleRate rate) {
    if (rate.per_second < 16000)
        throw Error(Fault::bad_request, "The singer needs a sample rate of 16 kHz or more.");
    Random random(singer.seed);
    const Layout layout = lay_out(song);
    const Seconds length = layout.end + Seconds(0.5);
    const auto samples = static_cast<std::size_t>(std::llround(length.value() * rate.per_second));
    const std::vector<Control> controls = steer(layout, singer, rate, length, random.fork());

    Rendition out{rate, std::vector<float>(samples), {}};
    sing(out.samples, controls, rate, random.fork());
    out.truth = truth_of(layout, singer, controls, out.samples, rate);
    for (const PlacedBreath& b : layout.breaths) {
        Random own = random.fork();
        if (b.breath.silent) continue;
        const Decibels level = singer.usual_level + b.breath.level.value_or(singer.breath_level);
        add(out.samples, breath_noise(b.span.length(), amplitude_of(level), rate, own), b.span.start, rate);
    }
    for (const PlacedNote& n : layout.notes) {
        Random own = random.fork();
        const Consonant c = n.note.consonant;
        const Decibels level = singer.usual_level + n.note.level + level_of(c);
        add(out.samples, consonant_noise(c, amplitude_of(level), rate, own), n.whole.start, rate);
    }
    return out;
}

} // namespace luft::singer
