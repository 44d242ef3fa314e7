#include "voice/presence.h"

#include "signal/statistics.h"
#include "voice/chances.h"
#include "voice/likeness.h"
#include "voice/presence_weights.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>

namespace luft::voice {
namespace {

constexpr double kMostOdds = 8;

/// The value that parts the others best into two classes (Otsu 1979): greatest variance between them. Values
/// beyond +-`most` count as that.
double parting(std::span<const float> values, double most) {
    constexpr std::size_t kBins = 100;
    std::array<double, kBins> histogram{};
    double all = 0;
    for (const float v : values) {
        const double place = (std::clamp<double>(v, -most, most) + most) / (2 * most) * kBins;
        const std::size_t bin = std::min(kBins - 1, static_cast<std::size_t>(place));
        ++histogram[bin];
        all += static_cast<double>(bin);
    }
    const auto count = static_cast<double>(values.size());
    double below = 0, below_sum = 0, best = -1, at = 0;
    for (std::size_t b = 0; b + 1 < kBins; ++b) {
        below += histogram[b];
        below_sum += histogram[b] * static_cast<double>(b);
        if (below == 0 || below == count) continue;
        const double apart = below_sum / below - (all - below_sum) / (count - below);
        const double between = below * (count - below) * apart * apart;
        if (between > best) {
            best = between;
            at = static_cast<double>(b) + 1;
        }
    }
    return (2 * at / kBins - 1) * most;
}

/// Means over parts of a curve.
class Means {
  public:
    explicit Means(std::span<const float> x) : sums_(x.size() + 1, 0.0) {
        std::partial_sum(x.begin(), x.end(), sums_.begin() + 1, [](double sum, double v) { return sum + v; });
    }
    /// From frame `from` to `to` (not included), as far as they exist; 0 where none does.
    [[nodiscard]] double between(std::ptrdiff_t from, std::ptrdiff_t to) const {
        const auto last = static_cast<std::ptrdiff_t>(sums_.size()) - 1;
        from = std::clamp<std::ptrdiff_t>(from, 0, last), to = std::clamp<std::ptrdiff_t>(to, 0, last);
        return to > from ? (sums_[to] - sums_[from]) / static_cast<double>(to - from) : 0;
    }
    [[nodiscard]] double around(std::ptrdiff_t i, std::ptrdiff_t reach) const {
        return between(i - reach, i + reach + 1);
    }
    [[nodiscard]] double all() const { return between(0, static_cast<std::ptrdiff_t>(sums_.size())); }

  private:
    std::vector<double> sums_;
};

/// What is measured by frame, before it is averaged.
struct Tracks {
    std::vector<float> odds, sure, leaps, level, tonality, hiss, octaves, octaves_squared;
    double threshold = 0;
};

/// Log odds of a frame's candidates together; -10 where there is none.
double together(std::span<const float> odds) {
    if (odds.empty()) return -10;
    const double most = *std::ranges::max_element(odds);
    double sum = 0;
    for (const float o : odds)
        sum += std::exp(o - most);
    return most + std::log(sum);
}

/// By frame the place of its candidate in the likeliest line through the whole recording, sung or not.
std::vector<std::optional<std::size_t>> likeliest_line(const Lattice& lattice, std::span<const float> odds,
                                                       const Progress& progress) {
    constexpr double kAlwaysSung = 12;
    Lattice scratch = lattice;
    make_probabilities(odds, kAlwaysSung, scratch);
    const Curve<Hertz> line = track_pitch(scratch, costs_accompanied(), progress);
    std::vector<std::optional<std::size_t>> places(lattice.frames());
    for (std::size_t i = 0, first = 0; i < places.size(); ++i) {
        const auto here = lattice.at(i);
        for (std::size_t c = 0; c < here.size(); ++c)
            if (here[c].hz == line.raw()[i]) places[i] = first + c;
        first += here.size();
    }
    return places;
}

/// Level over 4.5 kHz against all, dB.
float hiss_of(const Texture& texture, std::size_t i) {
    const BandLevels& bands = texture.bands()[i];
    double sum = 0;
    for (std::size_t b = 7; b < kBands; ++b)
        sum += std::pow(10.0, bands[b] / 10);
    return static_cast<float>(power_level(sum).value() - texture.level_at(i).value());
}

Tracks tracks_of(const FirstPass& pass, std::span<const float> odds, const Progress& progress) {
    constexpr double kLeap = 0.9 / 12, kSilent = -40;
    const Lattice& lattice = pass.harmonic;
    const auto all = lattice.all();
    const auto line = likeliest_line(lattice, odds, progress);
    const double loud = loud_level(lattice, pass.claims);
    Tracks t;
    std::vector<float> along, unlimited;
    for (std::size_t i = 0, first = 0; i < lattice.frames(); first += lattice.at(i).size(), ++i) {
        unlimited.push_back(static_cast<float>(together(odds.subspan(first, lattice.at(i).size()))));
        t.odds.push_back(std::clamp<float>(unlimited.back(), -kMostOdds, kMostOdds));
        const double octaves = line[i] ? std::log2(all[*line[i]].hz / 440.0) : 0;
        const bool leaps = i > 0 && line[i] && line[i - 1] && std::abs(octaves - t.octaves.back()) > kLeap;
        t.leaps.push_back(leaps ? 1 : 0);
        t.octaves.push_back(static_cast<float>(octaves));
        t.octaves_squared.push_back(static_cast<float>(octaves * octaves));
        t.level.push_back(
            static_cast<float>(line[i] ? std::max(kSilent, pass.claims[*line[i]].level - loud) : kSilent));
        t.tonality.push_back(pass.texture.tonality()[i]);
        t.hiss.push_back(hiss_of(pass.texture, i));
        if (line[i]) along.push_back(odds[*line[i]]);
    }
    t.threshold = along.empty() ? 0 : parting(signal::running_mean(along, 3), kMostOdds);
    for (const float o : unlimited)
        t.sure.push_back(static_cast<float>(signal::logistic(o - t.threshold)));
    return t;
}

} // namespace

std::vector<PresenceFeatures> presence_features(const FirstPass& pass, std::span<const float> odds,
                                                const Progress& progress) {
    const Tracks t = tracks_of(pass, odds, progress.part(0, 0.7));
    const Means of_odds(t.odds), sure(t.sure), leaps(t.leaps), level(t.level), tonality(t.tonality),
        hiss(t.hiss), octaves(t.octaves), squared(t.octaves_squared);
    const double low = signal::quantile(t.odds, 0.1).value_or(0);
    const double high = signal::quantile(t.odds, 0.9).value_or(0);
    const auto spread = [&](std::ptrdiff_t i, std::ptrdiff_t reach) {
        const double mean = octaves.around(i, reach);
        return std::sqrt(std::max(0.0, squared.around(i, reach) - mean * mean));
    };
    std::vector<PresenceFeatures> out(t.odds.size());
    for (std::size_t frame = 0; frame < out.size(); ++frame) {
        if (frame % 4096 == 0)
            progress.step(0.7 + 0.3 * static_cast<double>(frame) / static_cast<double>(out.size()),
                          "telling the voice from instruments");
        const auto i = static_cast<std::ptrdiff_t>(frame);
        const double before = of_odds.between(i - 40, i), after = of_odds.between(i, i + 40);
        const double off = t.octaves[frame] - octaves.all();
        const std::array<double, kPresenceFeatures> all{1,
                                                        t.odds[frame],
                                                        t.threshold,
                                                        of_odds.around(i, 5),
                                                        of_odds.around(i, 20),
                                                        of_odds.around(i, 60),
                                                        of_odds.around(i, 200),
                                                        low,
                                                        high,
                                                        sure.all(),
                                                        sure.around(i, 20),
                                                        sure.around(i, 60),
                                                        sure.around(i, 200),
                                                        t.sure[frame],
                                                        leaps.around(i, 10),
                                                        leaps.around(i, 40),
                                                        leaps.around(i, 150),
                                                        t.level[frame],
                                                        level.around(i, 10),
                                                        level.around(i, 60),
                                                        level.between(i, i + 15) - level.between(i - 15, i),
                                                        of_odds.between(i, i + 15) -
                                                            of_odds.between(i - 15, i),
                                                        t.tonality[frame],
                                                        tonality.around(i, 40),
                                                        t.hiss[frame],
                                                        hiss.around(i, 40),
                                                        before,
                                                        after,
                                                        std::min(before, after),
                                                        std::max(before, after),
                                                        spread(i, 60),
                                                        spread(i, 200),
                                                        std::abs(off),
                                                        off};
        std::ranges::transform(all, out[frame].begin(), [](double v) { return static_cast<float>(v); });
    }
    return out;
}

double presence(const PresenceFeatures& features) {
    double odds = kPresenceBias;
    for (const PresenceUnit& unit : kPresenceUnits)
        odds += unit.counts *
                std::tanh(std::inner_product(features.begin(), features.end(), unit.weights.begin(), 0.0));
    return odds;
}

std::vector<float> voice_presence(const FirstPass& pass, std::vector<float> odds, const Progress& progress) {
    const auto features = presence_features(pass, odds, progress);
    for (std::size_t i = 0, first = 0; i < features.size(); ++i) {
        const auto here = std::span(odds).subspan(first, pass.harmonic.at(i).size());
        const auto moved = static_cast<float>(presence(features[i]) - together(here));
        for (float& o : here)
            o += moved;
        first += here.size();
    }
    return odds;
}

} // namespace luft::voice
