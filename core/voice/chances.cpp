#include "voice/chances.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {

Curve<Share> make_probabilities(std::span<const float> odds, double towards_sung, Lattice& lattice) {
    Curve<Share> probability;
    auto all = lattice.all();
    for (std::size_t i = 0, first = 0; i < lattice.frames(); ++i) {
        const std::size_t count = lattice.at(i).size();
        double most = 0;
        for (std::size_t c = 0; c < count; ++c)
            most = std::max(most, odds[first + c] + towards_sung);
        double sung = 0;
        for (std::size_t c = 0; c < count; ++c)
            sung += std::exp(odds[first + c] + towards_sung - most);
        const double sum = sung + std::exp(-most);
        for (std::size_t c = 0; c < count; ++c)
            all[first + c].probability =
                static_cast<float>(std::exp(odds[first + c] + towards_sung - most) / sum);
        probability.push(Share(sung / sum));
        first += count;
    }
    return probability;
}

} // namespace luft::voice
