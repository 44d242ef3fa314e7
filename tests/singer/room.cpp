#include "singer/room.h"

#include "singer/random.h"

#include <algorithm>
#include <cmath>

namespace luft::singer {
namespace {

class Delay {
  public:
    Delay(double seconds, SampleRate rate)
        : line_(std::max<std::size_t>(1, static_cast<std::size_t>(std::llround(seconds * rate.per_second)))) {
    }
    [[nodiscard]] double out() const { return line_[at_]; }
    void in(double x) {
        line_[at_] = x;
        at_ = (at_ + 1) % line_.size();
    }

  private:
    std::vector<double> line_;
    std::size_t at_ = 0;
};

struct Comb {
    Delay delay;
    double gain, damp, low = 0;
    double run(double x) {
        const double y = delay.out();
        low += (1 - damp) * (y - low);
        delay.in(x + gain * low);
        return y;
    }
};

struct AllPass {
    Delay delay;
    double gain;
    double run(double x) {
        const double y = delay.out() - gain * x;
        delay.in(x + gain * y);
        return y;
    }
};

double power_of(std::span<const float> x) {
    double p = 0;
    for (const float v : x)
        p += double(v) * v;
    return p;
}

} // namespace

std::vector<float> in_room(std::span<const float> dry, SampleRate rate, const Room& room) {
    Random random(room.seed);
    std::vector<Comb> combs;
    for (const double ms : {29.7, 37.1, 41.1, 43.7, 47.9, 53.3}) { // spread without common factors
        const double s = ms / 1000 * (1 + 0.03 * (random.uniform() - 0.5));
        combs.push_back({Delay(s, rate), std::pow(10.0, -3 * s / room.decay.value()), 0.25});
    }
    AllPass first{Delay(0.0050, rate), 0.7}, second{Delay(0.0017, rate), 0.7};
    Delay ahead(room.ahead.value(), rate);
    std::vector<float> wet(dry.size());
    for (std::size_t n = 0; n < dry.size(); ++n) {
        const double x = ahead.out();
        ahead.in(dry[n]);
        double sum = 0;
        for (Comb& c : combs)
            sum += c.run(x);
        wet[n] = static_cast<float>(second.run(first.run(sum)));
    }
    const double power = power_of(wet);
    const double k = power > 0 ? amplitude_of(room.wet) * std::sqrt(power_of(dry) / power) : 0;
    const double hiss = amplitude_of(room.floor);
    for (std::size_t n = 0; n < dry.size(); ++n)
        wet[n] = static_cast<float>(double(dry[n]) + k * double(wet[n]) + hiss * random.bell());
    return wet;
}

} // namespace luft::singer
