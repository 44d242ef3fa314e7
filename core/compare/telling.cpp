#include "compare/telling.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace luft::compare {
namespace {

constexpr double kMost = 6;
constexpr Seconds kSamePlace{0.5}; // as breaths are told apart; see differences.h

/// The normal deviate that is exceeded with this two-sided probability, by halving.
double deviate(double probability) {
    double low = 0, high = kMost;
    for (int i = 0; i < 50; ++i) {
        const double middle = (low + high) / 2;
        (std::erfc(middle / std::sqrt(2.0)) > probability ? low : high) = middle;
    }
    return high;
}

bool stands_at_the_head(const Difference& d) {
    return !d.a && (d.kind == DifferenceKind::key || d.kind == DifferenceKind::tuning ||
                    d.kind == DifferenceKind::tempo);
}

bool same_place(const Difference& x, const Difference& y) {
    if (!x.a || !y.a) return !x.a && !y.a && x.kind == y.kind;
    return x.a->start <= y.a->end + kSamePlace && y.a->start <= x.a->end + kSamePlace;
}

} // namespace

double beyond(const Difference& d) {
    if (d.unit == Unit::times) return deviate(d.expected);
    if (d.expected <= 0) return d.size == 0 ? 0 : kMost;
    return std::min(kMost, std::abs(d.size) / d.expected);
}

Matter matter_of(DifferenceKind kind) {
    switch (kind) {
    case DifferenceKind::key:
    case DifferenceKind::tuning:
        return Matter::key;
    case DifferenceKind::tempo:
    case DifferenceKind::phrase_tempo:
        return Matter::tempo;
    case DifferenceKind::lowest_note:
    case DifferenceKind::highest_note:
    case DifferenceKind::tessitura:
        return Matter::range;
    case DifferenceKind::breath_added:
    case DifferenceKind::breath_saved:
    case DifferenceKind::breath_moved:
    case DifferenceKind::phrase_joined:
    case DifferenceKind::phrase_broken:
        return Matter::breathing;
    case DifferenceKind::other_register:
    case DifferenceKind::crack:
        return Matter::registers;
    case DifferenceKind::onset:
    case DifferenceKind::offset:
        return Matter::edges;
    case DifferenceKind::vibrato:
    case DifferenceKind::vibrato_rate:
    case DifferenceKind::vibrato_extent:
        return Matter::vibrato;
    case DifferenceKind::scoop:
    case DifferenceKind::drift:
    case DifferenceKind::note_intonation:
    case DifferenceKind::phrase_intonation:
        return Matter::intonation;
    case DifferenceKind::other_note:
    case DifferenceKind::added_notes:
        return Matter::notes;
    case DifferenceKind::level_range:
    case DifferenceKind::level_shape:
    case DifferenceKind::note_level:
        return Matter::level;
    case DifferenceKind::vowel:
    case DifferenceKind::closure:
    case DifferenceKind::ring:
        return Matter::colour;
    }
    return Matter::key;
}

std::vector<Telling> most_telling(const std::vector<Difference>& differences, std::size_t most) {
    std::vector<std::size_t> left;
    for (std::size_t i = 0; i < differences.size(); ++i)
        if (!stands_at_the_head(differences[i])) left.push_back(i);
    std::map<Matter, int> told;
    const auto rank = [&](std::size_t i) {
        const Difference& d = differences[i];
        return std::pair(-told[matter_of(d.kind)], beyond(d) * d.confidence.value);
    };
    std::vector<Telling> out;
    while (out.size() < most && !left.empty()) {
        const std::size_t best = *std::ranges::max_element(left, {}, rank); // of equals the first
        Telling one{best};
        for (const std::size_t i : left)
            if (i != best && matter_of(differences[i].kind) == matter_of(differences[best].kind) &&
                same_place(differences[i], differences[best]))
                one.likewise.push_back(i);
        std::erase_if(left, [&](std::size_t i) {
            return i == best || std::ranges::find(one.likewise, i) != one.likewise.end();
        });
        ++told[matter_of(differences[best].kind)];
        out.push_back(std::move(one));
    }
    return out;
}

} // namespace luft::compare
