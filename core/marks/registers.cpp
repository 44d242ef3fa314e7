#include "marks/registers.h"

#include "base/text.h"
#include "signal/statistics.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace luft::marks {
namespace {

constexpr std::size_t kFeatures = 3; // H1-H2, alpha ratio, CPP
using Features = std::array<double, kFeatures>;

struct Sample {
    Features x{};
    double pitch = 0;
    double weight = 0;
};

struct State {
    double share = 0.5;
    Features mean{}, variance{};
    double pitch = 0;
};

double log_density(const State& s, const Features& x) {
    double sum = std::log(std::max(s.share, 1e-6));
    for (std::size_t k = 0; k < kFeatures; ++k)
        sum -= 0.5 * (std::log(s.variance[k]) + (x[k] - s.mean[k]) * (x[k] - s.mean[k]) / s.variance[k]);
    return sum;
}

std::optional<Sample> sample_at(const voice::Curves& c, std::size_t from, std::size_t to) {
    const auto part = [&](std::span<const float> curve) {
        return signal::median(curve.subspan(from, to - from));
    };
    const auto h1h2 = part(c.h1h2.raw()), alpha = part(c.alpha.raw()), cpp = part(c.cpp.raw()),
               f0 = part(c.f0.raw());
    if (!h1h2 || !alpha || !cpp || !f0) return std::nullopt;
    return Sample{{*h1h2, *alpha, *cpp}, pitch_of(Hertz(*f0)).value(), static_cast<double>(to - from)};
}

struct Model {
    State chest, head;
    Features scale{}, centre{};
    bool split = false;

    [[nodiscard]] double head_score(const Features& raw) const {
        Features x{};
        for (std::size_t k = 0; k < kFeatures; ++k)
            x[k] = (raw[k] - centre[k]) / scale[k];
        return log_density(head, x) - log_density(chest, x);
    }
};

Model fit(std::vector<Sample> samples) {
    Model m;
    if (samples.size() < 6) return m;
    double total = 0;
    for (std::size_t k = 0; k < kFeatures; ++k) {
        std::vector<double> values;
        for (const Sample& s : samples)
            values.push_back(s.x[k]);
        m.centre[k] = *signal::median(values);
        m.scale[k] = std::max(0.5, *signal::quantile(values, 0.84) - *signal::quantile(values, 0.16)) / 2;
    }
    for (Sample& s : samples) {
        total += s.weight;
        for (std::size_t k = 0; k < kFeatures; ++k)
            s.x[k] = (s.x[k] - m.centre[k]) / m.scale[k];
    }
    // Start: head where H1-H2 is high and upper partials are weak.
    std::vector<double> share(samples.size());
    for (std::size_t i = 0; i < samples.size(); ++i)
        share[i] = signal::logistic(1.5 * (samples[i].x[0] - samples[i].x[1]));
    for (int round = 0; round < 40; ++round) {
        for (State* s : {&m.chest, &m.head}) {
            double w = 1e-9;
            Features mean{}, square{};
            double pitch = 0;
            for (std::size_t i = 0; i < samples.size(); ++i) {
                const double part = samples[i].weight * (s == &m.head ? share[i] : 1 - share[i]);
                w += part;
                pitch += part * samples[i].pitch;
                for (std::size_t k = 0; k < kFeatures; ++k)
                    mean[k] += part * samples[i].x[k];
            }
            for (std::size_t k = 0; k < kFeatures; ++k)
                mean[k] /= w;
            for (std::size_t i = 0; i < samples.size(); ++i) {
                const double part = samples[i].weight * (s == &m.head ? share[i] : 1 - share[i]);
                for (std::size_t k = 0; k < kFeatures; ++k)
                    square[k] += part * (samples[i].x[k] - mean[k]) * (samples[i].x[k] - mean[k]);
            }
            s->share = w / total;
            s->mean = mean;
            for (std::size_t k = 0; k < kFeatures; ++k)
                s->variance[k] = std::max(square[k] / w, 0.1);
            s->pitch = pitch / w;
        }
        for (std::size_t i = 0; i < samples.size(); ++i)
            share[i] =
                signal::logistic(log_density(m.head, samples[i].x) - log_density(m.chest, samples[i].x));
    }
    // Apart? Distance of the means over the pooled spread, in H1-H2 and over all.
    double distance = 0;
    for (std::size_t k = 0; k < kFeatures; ++k) {
        const double d = m.head.mean[k] - m.chest.mean[k];
        distance += d * d / (0.5 * (m.head.variance[k] + m.chest.variance[k]));
    }
    const double least_share = std::min(m.head.share, m.chest.share);
    const double h1h2_apart = (m.head.mean[0] - m.chest.mean[0]) * m.scale[0]; // dB
    m.split = std::sqrt(distance) > 2.5 && h1h2_apart > 3 && m.head.mean[1] < m.chest.mean[1] &&
              m.head.pitch > m.chest.pitch - 2 && least_share > 0.04;
    return m;
}

} // namespace

bool find_registers(voice::Curves& c, std::vector<Note>& notes) {
    constexpr std::size_t kPiece =
        12; // frames a sample: notes are cut into pieces, so that a switch inside one shows
    std::vector<Sample> samples;
    const auto frames_of = [&](const Note& n) {
        return std::pair{
            static_cast<std::size_t>(std::max<std::int64_t>(nearest_frame(n.span.start).value, 0)),
            std::min(static_cast<std::size_t>(nearest_frame(n.span.end).value), c.frames())};
    };
    for (const Note& n : notes) {
        const auto [begin, end] = frames_of(n);
        for (std::size_t a = begin + 3; a + kPiece <= end; a += kPiece)
            if (const auto s = sample_at(c, a, a + kPiece)) samples.push_back(*s);
    }
    c.head_register = Curve<Share>(c.frames());
    const Model model = fit(samples);
    if (!model.split) return false;

    // Frame by frame, smoothed over 150 ms: single frames are too noisy to trust.
    const auto smooth = [](const Curve<Decibels>& curve) { return signal::running_median(curve.raw(), 5); };
    const auto h1h2 = smooth(c.h1h2), alpha = smooth(c.alpha), cpp = smooth(c.cpp);
    for (Note& n : notes) {
        const auto [begin, end] = frames_of(n);
        // Two-state path over the note: a change costs as much as some 8 frames of clear evidence.
        constexpr double kChange = 12;
        std::vector<double> score(end - begin, 0.0);
        for (std::size_t i = begin; i < end; ++i) {
            const Features x{h1h2[i], alpha[i], cpp[i]};
            if (std::isnan(x[0]) || std::isnan(x[1]) || std::isnan(x[2])) continue;
            score[i - begin] = std::clamp(model.head_score(x), -3.0, 3.0);
        }
        double sum = 0;
        for (const double s : score)
            sum += s;
        std::array<double, 2> cost{};
        std::vector<std::array<bool, 2>> changed(score.size());
        for (std::size_t i = 0; i < score.size(); ++i) {
            const std::array<double, 2> old = cost;
            for (std::size_t s = 0; s < 2; ++s) {
                changed[i][s] = i > 0 && old[1 - s] + kChange < old[s];
                cost[s] =
                    (changed[i][s] ? old[1 - s] + kChange : old[s]) + (s == 1 ? -score[i] : score[i]) / 2;
            }
        }
        std::size_t state = cost[1] < cost[0] ? 1 : 0;
        double head_frames = 0;
        for (std::size_t i = score.size(); i-- > 0;) {
            head_frames += static_cast<double>(state);
            const double sure = signal::logistic(std::abs(score[i]));
            c.head_register.set(begin + i, Share(state == 1 ? sure : 1 - sure));
            if (changed[i][state]) state = 1 - state;
        }
        if (!score.empty())
            n.sung_in =
                2 * head_frames > static_cast<double>(score.size()) ? Register::head : Register::chest;
    }
    return true;
}

std::vector<Switch> find_switches(const voice::Curves& c, const std::vector<Note>& notes,
                                  const std::vector<Phrase>& phrases) {
    std::vector<Switch> found;
    const auto head_at = [&](std::size_t i) {
        return c.head_register.at(FrameIndex{static_cast<std::int64_t>(i)});
    };
    constexpr std::size_t kHolds = 12; // frames that the new register must last
    for (const Phrase& p : phrases) {
        std::optional<bool> state;
        const auto begin =
            static_cast<std::size_t>(std::max<std::int64_t>(nearest_frame(p.span.start).value, 0));
        const auto end = std::min(static_cast<std::size_t>(nearest_frame(p.span.end).value), c.frames());
        for (std::size_t i = begin; i < end; ++i) {
            const auto head = head_at(i);
            if (!head) continue;
            const bool is_head = *head > Share(0.5);
            if (!state) {
                state = is_head;
                continue;
            }
            if (is_head == *state) continue;
            std::size_t holds = 0;
            double sure = 0;
            for (std::size_t k = i; k < end && head_at(k) && (*head_at(k) > Share(0.5)) == is_head;
                 ++k, ++holds)
                sure += std::abs(head_at(k)->value() - 0.5) * 2;
            if (holds < kHolds) {
                i += holds;
                continue;
            }
            Switch s;
            s.time = time_of({static_cast<std::int64_t>(i)});
            // At the seam of two notes the switch belongs to the seam.
            for (const Note& n : notes)
                if (std::abs((n.span.start - s.time).value()) < 0.08) s.time = n.span.start;
            s.from = *state ? Register::head : Register::chest;
            s.to = is_head ? Register::head : Register::chest;
            const auto pitch_near = [&](std::size_t from, std::size_t to) {
                const auto m = signal::median(c.f0.raw().subspan(from, to - from));
                return m ? pitch_of(Hertz(*m)).value() : 0.0;
            };
            const double jump =
                pitch_near(i, std::min(i + 12, end)) - pitch_near(i > begin + 12 ? i - 12 : begin, i);
            s.leap = std::abs(jump) > 2.5;
            s.confidence = {std::clamp(0.35 + 0.6 * sure / static_cast<double>(holds), 0.3, 0.95)};
            s.evidence = std::string(is_head ? "the upper partials weaken and the first one stands out"
                                             : "the upper partials come in and the first one stands back") +
                         (s.leap ? ", on a leap of " + fixed(std::abs(jump), 0) + " semitones" : "");
            found.push_back(std::move(s));
            state = is_head;
        }
    }
    return found;
}

} // namespace luft::marks
