#include "compare/pins.h"

#include <algorithm>

namespace luft::compare {

void obey(std::vector<Stretch>& stretches, const std::vector<Pair>& pins) {
    for (Stretch& s : stretches)
        std::erase_if(s.knots, [&](const Pair& k) {
            return std::ranges::any_of(pins, [&](const Pair& p) { return (k.a == p.a) != (k.b == p.b); });
        });
    std::erase_if(stretches, [](const Stretch& s) { return s.knots.size() < 2; });
}

void add_lone_pins(std::vector<Stretch>& stretches, const std::vector<Pair>& pins, const Pair& end) {
    constexpr Seconds kReach{0.25};
    for (std::size_t i = 0; i < pins.size(); ++i) {
        const Pair& pin = pins[i];
        const auto next =
            std::ranges::find_if(stretches, [&](const Stretch& s) { return s.knots.back().a >= pin.a; });
        if (next != stretches.end() && std::ranges::find(next->knots, pin) != next->knots.end()) continue;
        std::vector<Pair> before{i > 0 ? pins[i - 1] : Pair{}},
            after{i + 1 < pins.size() ? pins[i + 1] : end};
        if (next != stretches.begin()) before.push_back((next - 1)->knots.back());
        if (next != stretches.end()) after.push_back(next->knots.front());
        Seconds left = kReach, right = kReach;
        for (const Pair& p : before)
            left = std::min({left, (pin.a - p.a) / 2, (pin.b - p.b) / 2});
        for (const Pair& p : after)
            right = std::min({right, (p.a - pin.a) / 2, (p.b - pin.b) / 2});
        Stretch lone;
        if (left > Seconds(0)) lone.knots.push_back({pin.a - left, pin.b - left});
        lone.knots.push_back(pin);
        if (right > Seconds(0)) lone.knots.push_back({pin.a + right, pin.b + right});
        lone.confidence = {1}; // the coach's word
        if (lone.knots.size() > 1) stretches.insert(next, std::move(lone));
    }
}

} // namespace luft::compare
