#include "bench/calibration.h"

#include <algorithm>
#include <cmath>

namespace luft::bench {

void Reliability::add(Confidence said, bool right) {
    const auto k = static_cast<std::size_t>(std::clamp(said.value * 5, 0.0, 4.0));
    ++bins_[k].count;
    bins_[k].confidence += said.value;
    bins_[k].right += right ? 1 : 0;
}

Reliability& Reliability::operator+=(const Reliability& o) {
    for (std::size_t k = 0; k < bins_.size(); ++k) {
        bins_[k].count += o.bins_[k].count;
        bins_[k].confidence += o.bins_[k].confidence;
        bins_[k].right += o.bins_[k].right;
    }
    return *this;
}

double Reliability::count() const {
    double n = 0;
    for (const Bin& b : bins_)
        n += b.count;
    return n;
}

double Reliability::error() const {
    double sum = 0;
    for (const Bin& b : bins_)
        sum += std::abs(b.right - b.confidence);
    return count() > 0 ? sum / count() : 0;
}

} // namespace luft::bench
