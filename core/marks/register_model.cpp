#include "marks/register_model.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

double log_density(const RegisterState& s, const RegisterFeatures& x) {
    double sum = std::log(std::max(s.share, 1e-6));
    for (std::size_t k = 0; k < kRegisterFeatures; ++k)
        sum -= 0.5 * (std::log(s.variance[k]) + (x[k] - s.mean[k]) * (x[k] - s.mean[k]) / s.variance[k]);
    return sum;
}

/// Mean, variance and share of one state; `part` is how much of each sample belongs to it.
RegisterState weigh(const std::vector<RegisterSample>& samples, const std::vector<double>& part,
                    double total) {
    RegisterState s;
    double w = 1e-9;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        w += part[i];
        s.pitch += part[i] * samples[i].pitch.value();
        for (std::size_t k = 0; k < kRegisterFeatures; ++k)
            s.mean[k] += part[i] * samples[i].features[k];
    }
    s.pitch /= w;
    for (double& m : s.mean)
        m /= w;
    for (std::size_t k = 0; k < kRegisterFeatures; ++k) {
        double square = 0;
        for (std::size_t i = 0; i < samples.size(); ++i) {
            const double d = samples[i].features[k] - s.mean[k];
            square += part[i] * d * d;
        }
        constexpr double kLeastVariance = 0.1; // keeps a state from shrinking onto a few samples
        s.variance[k] = std::max(square / w, kLeastVariance);
    }
    s.share = w / total;
    return s;
}

bool stand_apart(const RegisterModel& m) {
    double distance = 0;
    for (std::size_t k = 0; k < kRegisterFeatures; ++k) {
        const double d = m.head.mean[k] - m.chest.mean[k];
        distance += d * d / (0.5 * (m.head.variance[k] + m.chest.variance[k]));
    }
    const double h1h2_apart = (m.head.mean[0] - m.chest.mean[0]) * m.scale[0]; // dB
    return std::sqrt(distance) > 2.5 && h1h2_apart > 2 && m.head.mean[1] < m.chest.mean[1] &&
           m.head.pitch > m.chest.pitch && std::min(m.head.share, m.chest.share) > 0.04;
}

} // namespace

std::optional<RegisterFeatures> register_features(const voice::Curves& c, std::size_t from, std::size_t to) {
    const auto part = [&](std::span<const float> curve) {
        return signal::median(curve.subspan(from, to - from));
    };
    const auto h1h2 = part(c.h1h2.raw()), centroid = part(c.centroid.raw()), cpp = part(c.cpp.raw()),
               f0 = part(c.f0.raw());
    if (!h1h2 || !centroid || !cpp || !f0) return std::nullopt;
    return RegisterFeatures{*h1h2, std::log2(*centroid / *f0), *cpp};
}

double RegisterModel::head_score(const RegisterFeatures& raw) const {
    RegisterFeatures x{};
    for (std::size_t k = 0; k < kRegisterFeatures; ++k)
        x[k] = (raw[k] - centre[k]) / scale[k];
    return log_density(head, x) - log_density(chest, x);
}

RegisterModel fit_registers(const std::vector<RegisterSample>& raw) {
    RegisterModel m;
    if (raw.size() < 6) return m;
    std::vector<RegisterSample> samples = raw;
    for (std::size_t k = 0; k < kRegisterFeatures; ++k) {
        std::vector<double> values;
        for (const auto& s : raw)
            values.push_back(s.features[k]);
        m.centre[k] = *signal::median(values);
        m.scale[k] = std::max(0.1, (*signal::quantile(values, 0.84) - *signal::quantile(values, 0.16)) / 2);
        for (auto& s : samples)
            s.features[k] = (s.features[k] - m.centre[k]) / m.scale[k];
    }
    std::vector<double> head_share;
    double total = 0;
    for (const auto& s : samples) {
        total += s.weight;
        head_share.push_back(signal::logistic(s.features[0] - s.features[1] - s.features[2]));
    }
    std::vector<double> part(samples.size());
    for (int round = 0; round < 40; ++round) {
        for (std::size_t i = 0; i < samples.size(); ++i)
            part[i] = samples[i].weight * (1 - head_share[i]);
        m.chest = weigh(samples, part, total);
        for (std::size_t i = 0; i < samples.size(); ++i)
            part[i] = samples[i].weight * head_share[i];
        m.head = weigh(samples, part, total);
        for (std::size_t i = 0; i < samples.size(); ++i)
            head_share[i] = signal::logistic(log_density(m.head, samples[i].features) -
                                             log_density(m.chest, samples[i].features));
    }
    m.split = stand_apart(m);
    return m;
}

} // namespace luft::marks
