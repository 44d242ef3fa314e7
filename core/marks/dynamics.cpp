#include "marks/dynamics.h"

#include "marks/phrase_levels.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace luft::marks {
namespace {

constexpr std::size_t kLeastNotes = 8;
constexpr Seconds kLeastSinging{4};
constexpr double kTail = 0.05;

/// Level under which the share `part` of the sung time lies.
Decibels level_below(std::span<const Note> notes, double part) {
    std::vector<std::pair<double, double>> by_level;
    double all = 0;
    for (const Note& n : notes) {
        const double weight = n.span.length().value() * n.confidence.value;
        by_level.emplace_back(n.level.value(), weight);
        all += weight;
    }
    std::ranges::sort(by_level);
    double so_far = 0;
    for (const auto& [level, weight] : by_level) {
        so_far += weight;
        if (so_far >= part * all) return Decibels(level);
    }
    return Decibels(by_level.back().first);
}

} // namespace

Dynamic DynamicRange::at(Decibels level) const {
    // The softest of that many marks: they lie around mp and mf.
    constexpr std::array<int, 7> kSoftest{3, 3, 2, 2, 1, 1, 0};
    const auto count = static_cast<std::size_t>(std::clamp(steps, 1, 6));
    const double width = (loud - soft).value() / static_cast<double>(count);
    const double step = width > 0 ? std::floor((level - soft).value() / width) : 0;
    return static_cast<Dynamic>(kSoftest[count] +
                                static_cast<int>(std::clamp(step, 0.0, static_cast<double>(count - 1))));
}

std::optional<DynamicRange> dynamic_range(std::span<const Note> notes, voice::Setting setting) {
    Seconds sung;
    for (const Note& n : notes)
        sung += n.span.length();
    if (notes.size() < kLeastNotes || sung < kLeastSinging) return std::nullopt;
    const Decibels step = setting == voice::Setting::alone ? kDynamicStep : kDynamicStepAccompanied;
    DynamicRange range{level_below(notes, kTail), level_below(notes, 1 - kTail), 1};
    range.steps = static_cast<int>(std::clamp(std::floor((range.loud - range.soft) / step), 1.0, 6.0));
    return range;
}

void mark_dynamics(std::vector<Note>& notes, std::vector<Phrase>& phrases, voice::Setting setting) {
    const auto range = dynamic_range(notes, setting);
    if (!range) return;
    for (Note& n : notes)
        n.dynamic = range->at(n.level);
    for (Phrase& p : phrases)
        if (const auto sung = notes_within(notes, p.span); !sung.empty())
            p.dynamic = range->at(level_below(sung, 0.5));
}

} // namespace luft::marks
