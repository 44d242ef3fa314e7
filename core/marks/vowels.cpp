#include "marks/vowels.h"

#include "signal/statistics.h"

#include <array>
#include <cmath>

namespace luft::marks {
namespace {

struct VowelMeans {
    const char* sign;
    double f1, f2;
};

// Hillenbrand, Getty, Clark & Wheeler 1995, JASA 97(5), 3099-3111, table V: men's rows, then women's.
constexpr std::array<VowelMeans, 22> kTable = {{
    {"i", 342, 2322}, {"ɪ", 427, 2034}, {"e", 476, 2089}, {"ɛ", 580, 1799}, {"æ", 588, 1952},
    {"ɑ", 768, 1333}, {"ɔ", 652, 997},  {"o", 497, 910},  {"ʊ", 469, 1122}, {"u", 378, 997},
    {"ʌ", 623, 1200}, {"i", 437, 2761}, {"ɪ", 483, 2365}, {"e", 536, 2530}, {"ɛ", 731, 2058},
    {"æ", 669, 2349}, {"ɑ", 936, 1551}, {"ɔ", 781, 1136}, {"o", 555, 1035}, {"ʊ", 519, 1225},
    {"u", 459, 1105}, {"ʌ", 753, 1426},
}};

} // namespace

std::string nearest_vowel(Hertz f1, Hertz f2) {
    double best = std::log(1.25);
    std::string sign;
    for (const VowelMeans& v : kTable) {
        const double distance = std::hypot(std::log(f1.value() / v.f1), std::log(f2.value() / v.f2));
        if (distance < best) {
            best = distance;
            sign = v.sign;
        }
    }
    return sign;
}

namespace {

std::span<const float> middle_of(const Curve<Hertz>& curve, const Run& note) {
    const std::size_t skip = note.length() / 5;
    return curve.raw().subspan(note.begin + skip, note.length() - 2 * skip);
}

bool is_unsteady(std::span<const float> formant) {
    constexpr double kMost = 0.15; // octaves
    const auto low = signal::quantile(formant, 0.2), high = signal::quantile(formant, 0.8);
    return low && high && std::log2(*high / *low) > kMost;
}

} // namespace

void withhold_unsteady_vowels(voice::Curves& c, const std::vector<Run>& notes) {
    for (const Run& n : notes) {
        if (!is_unsteady(middle_of(c.f1, n)) && !is_unsteady(middle_of(c.f2, n))) continue;
        for (auto* curve : {&c.f1, &c.f2, &c.f3})
            for (std::size_t i = n.begin; i < n.end; ++i)
                curve->set(i, std::nullopt);
    }
}

std::optional<Vowel> find_vowel(const voice::Curves& curves, const Run& note) {
    const auto f1 = middle_of(curves.f1, note), f2 = middle_of(curves.f2, note);
    std::size_t known = 0;
    for (const float f : f1)
        known += !std::isnan(f);
    if (known < 4 || known * 3 < f1.size()) return std::nullopt;
    const Hertz m1(*signal::median(f1)), m2(*signal::median(f2));
    return Vowel{m1, m2, nearest_vowel(m1, m2)};
}

} // namespace luft::marks
