#include "marks/trust.h"

#include <algorithm>
#include <array>

namespace luft::marks {
namespace {

constexpr std::array<Worth, 4> kNotes{{{0.58, 0.18}, {0.84, 0.46}, {0.95, 0.65}, {0.98, 0.81}}};
constexpr std::array<Worth, 4> kBreaths{{{0.49, 0.38}, {0.61, 0.68}, {0.73, 0.71}, {0.92, 1.00}}};
constexpr std::array<Worth, 5> kPhrases{
    {{0.68, 0.16}, {0.83, 0.49}, {0.88, 0.54}, {0.93, 0.75}, {0.97, 0.86}}};

template <class Mark>
void set_right(std::vector<Mark>& marks, std::span<const Worth> points) {
    for (Mark& m : marks)
        m.confidence = worth_of(m.confidence, points);
}

} // namespace

Confidence worth_of(Confidence said, std::span<const Worth> points) {
    const auto above = std::ranges::find_if(points, [&](const Worth& w) { return w.said >= said.value; });
    if (above == points.end()) return {points.back().right};
    if (above == points.begin()) return {points.front().right};
    const Worth& below = *(above - 1);
    const double part = (said.value - below.said) / (above->said - below.said);
    return {below.right + part * (above->right - below.right)};
}

void set_confidence_right(Analysis& analysis) {
    if (analysis.setting == voice::Setting::alone) return;
    set_right(analysis.notes, kNotes);
    set_right(analysis.breaths, kBreaths);
    set_right(analysis.phrases, kPhrases);
}

} // namespace luft::marks
