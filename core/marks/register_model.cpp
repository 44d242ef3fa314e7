#include "marks/register_model.h"

#include "signal/least_squares.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr std::array<double, 2> kColourWeight{0.7, 0.3};
constexpr double kChestPulse = 1.05, kHeadPulse = 2.0;
constexpr double kHeld = 4; // samples that stand at these
constexpr double kLeastVariance = 0.02, kStartVariance = 0.06;
constexpr int kRounds = 30, kPulseAlone = 5;

double log_normal(double x, double mean, double variance) {
    return -0.5 * (std::log(variance) + (x - mean) * (x - mean) / variance);
}

double square(double x) {
    return x * x;
}

/// Mean and variance of the pulse in one state, given how much of each sample is in it.
void fit_pulse(const std::vector<RegisterSample>& samples, const std::vector<double>& part, double held_at,
               RegisterState& s) {
    double sum = kHeld / s.variance * held_at, weight = kHeld / s.variance, all = 0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double w = part[i] / (s.variance + square(samples[i].pulse_spread));
        sum += w * samples[i].pulse;
        weight += w;
        all += part[i];
    }
    s.pulse = sum / weight;
    double spread = kHeld * kStartVariance;
    for (std::size_t i = 0; i < samples.size(); ++i) { // the expected square of what lies behind the sample
        const double open = square(samples[i].pulse_spread), known = s.variance / (s.variance + open);
        spread += part[i] * (square(known * (samples[i].pulse - s.pulse)) + known * open);
    }
    s.variance = std::max(kLeastVariance, spread / (all + kHeld));
    s.share = (all + 2) / (static_cast<double>(samples.size()) + 4);
}

/// Colour over what is besides, with an offset for each state.
void fit_colour(const std::vector<RegisterSample>& samples, const std::vector<double>& head,
                RegisterModel& m) {
    for (std::size_t k = 0; k < kColourWeight.size(); ++k) {
        double mean = 0;
        for (const auto& s : samples)
            mean += s.colour[k] / static_cast<double>(samples.size());
        signal::LeastSquares fit(6);
        for (std::size_t i = 0; i < samples.size(); ++i) {
            std::array<double, 4> x = samples[i].besides;
            for (std::size_t j = 0; j < x.size(); ++j)
                x[j] -= m.centre[j];
            const double y = samples[i].colour[k] - mean;
            fit.add({1, 0, x[0], x[1], x[2], x[3]}, y, 1 - head[i]);
            fit.add({0, 1, x[0], x[1], x[2], x[3]}, y, head[i]);
        }
        const auto solved = fit.solve(0.25);
        m.chest.colour[k] = mean + solved[0]; // a state that has nothing stays at the mean
        m.head.colour[k] = mean + solved[1];
        std::copy(solved.begin() + 2, solved.end(), m.slopes[k].begin());
    }
}

/// Colour with everything besides at its mean.
double colour_of(const RegisterModel& m, const RegisterSample& s, std::size_t k) {
    double colour = s.colour[k];
    for (std::size_t j = 0; j < m.centre.size(); ++j)
        colour -= m.slopes[k][j] * (s.besides[j] - m.centre[j]);
    return colour;
}

/// How far the samples' colours lie off those of their states.
void fit_variance(const std::vector<RegisterSample>& samples, const std::vector<double>& head,
                  RegisterModel& m) {
    for (std::size_t k = 0; k < kColourWeight.size(); ++k) {
        double rest = 0;
        for (std::size_t i = 0; i < samples.size(); ++i) {
            const double colour = colour_of(m, samples[i], k);
            rest += (1 - head[i]) * square(colour - m.chest.colour[k]) +
                    head[i] * square(colour - m.head.colour[k]);
        }
        m.variance[k] = std::max(1.0, rest / static_cast<double>(samples.size()));
    }
}

bool counts(const RegisterModel& m, std::size_t k) {
    return m.head.colour[k] < m.chest.colour[k];
}

double log_density(const RegisterModel& m, const RegisterState& state, const RegisterSample& s,
                   bool pulse_alone) {
    double sum = log_normal(s.pulse, state.pulse, state.variance + square(s.pulse_spread));
    for (std::size_t k = 0; k < kColourWeight.size() && !pulse_alone; ++k)
        if (counts(m, k))
            sum += kColourWeight[k] * log_normal(colour_of(m, s, k), state.colour[k], m.variance[k]);
    return sum;
}

/// Log likelihood of one state for all samples.
double as_one(const std::vector<RegisterSample>& samples, const RegisterModel& two) {
    RegisterModel m = two;
    const std::vector<double> none(samples.size(), 0.0);
    RegisterState& s = m.chest;
    double weight = 0, sum = 0;
    for (const auto& x : samples) {
        const double w = 1 / (square(x.pulse_spread) + 0.05);
        weight += w;
        sum += w * x.pulse;
    }
    const double mean = sum / weight;
    s.variance = 0.1;
    for (int round = 0; round < 20; ++round) {
        double spread = 0;
        for (const auto& x : samples) {
            const double open = square(x.pulse_spread), known = s.variance / (s.variance + open);
            spread += square(known * (x.pulse - mean)) + known * open;
        }
        s.variance = std::max(kLeastVariance, spread / static_cast<double>(samples.size()));
    }
    fit_colour(samples, none, m);
    fit_variance(samples, none, m);
    double likelihood = 0;
    for (const auto& x : samples) {
        likelihood += log_normal(x.pulse, mean, s.variance + square(x.pulse_spread));
        for (std::size_t k = 0; k < kColourWeight.size(); ++k)
            if (counts(two, k))
                likelihood += kColourWeight[k] * log_normal(colour_of(m, x, k), s.colour[k], m.variance[k]);
    }
    return likelihood;
}

/// Mean cepstral peak of the head samples over that of the chest samples, as they are: where registers lie
/// apart in pitch, the regression can't tell what is due to which.
double clearer_in_head(const std::vector<RegisterSample>& samples, const std::vector<double>& head) {
    double in_head = 0, in_chest = 0, weight = 1e-9;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        in_head += head[i] * samples[i].colour[0];
        in_chest += (1 - head[i]) * samples[i].colour[0];
        weight += head[i];
    }
    return in_head / weight - in_chest / (static_cast<double>(samples.size()) - weight + 1e-6);
}

bool stand_apart(const RegisterModel& m, double clearer) {
    const double apart = m.head.pulse - m.chest.pulse;
    const double spread = std::sqrt((m.head.variance + m.chest.variance) / 2);
    // Weaker closure makes the period less clear: a rounder pulse alone is a vowel that the fit has missed.
    return m.gain > 0.09 && clearer < -1.5 && apart > 0.4 && apart > 2 * spread &&
           std::min(m.head.share, m.chest.share) > 0.04;
}

} // namespace

double RegisterModel::head_score(const RegisterSample& s) const {
    return log_density(*this, head, s, false) - log_density(*this, chest, s, false);
}

RegisterModel fit_registers(const std::vector<RegisterSample>& samples) {
    RegisterModel m;
    m.chest.pulse = kChestPulse;
    m.head.pulse = kHeadPulse;
    if (samples.size() < 8) return m;
    const auto n = static_cast<double>(samples.size());
    for (const auto& s : samples)
        for (std::size_t k = 0; k < m.centre.size(); ++k)
            m.centre[k] += s.besides[k] / n;
    m.passaggio = Passaggio(m.centre[0]);
    std::vector<double> head, chest(samples.size()), pitch;
    for (const auto& s : samples) {
        head.push_back(signal::logistic((s.pulse - 1.45) / 0.2)); // between the two that are held
        pitch.push_back(s.besides[0]);
    }
    for (int round = 0; round < kRounds; ++round) {
        for (std::size_t i = 0; i < samples.size(); ++i)
            chest[i] = 1 - head[i];
        fit_pulse(samples, chest, kChestPulse, m.chest);
        fit_pulse(samples, head, kHeadPulse, m.head);
        fit_colour(samples, head, m);
        fit_variance(samples, head, m);
        if (round >= kPulseAlone) m.passaggio.fit(pitch, head);
        m.gain = 0;
        for (std::size_t i = 0; i < samples.size(); ++i) {
            const bool alone = round < kPulseAlone;
            const double prior =
                alone ? std::log(m.head.share / m.chest.share) : m.passaggio.head_odds(pitch[i]);
            const double of_head = log_density(m, m.head, samples[i], alone) - std::log1p(std::exp(-prior));
            const double of_chest = log_density(m, m.chest, samples[i], alone) - std::log1p(std::exp(prior));
            head[i] = signal::logistic(of_head - of_chest);
            m.gain += std::max(of_head, of_chest) + std::log1p(std::exp(-std::abs(of_head - of_chest)));
        }
    }
    m.gain = (m.gain - as_one(samples, m)) / n;
    m.split = stand_apart(m, clearer_in_head(samples, head));
    return m;
}

} // namespace luft::marks
