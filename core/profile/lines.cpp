#include "profile/lines.h"

#include "profile/statistics.h"
#include "profile/thresholds.h"

#include <algorithm>

namespace luft::profile {
namespace {

/// A breath inside a phrase may stand at the border of two proposed phrases as well.
constexpr Seconds kBorder{0.3};
constexpr std::size_t kLeastForLevel = 3;

} // namespace

bool SungLine::even() const {
    return level_spread && *level_spread <= kEvenLine.value() &&
           (!end_under || *end_under < kFadingEnd.value());
}

std::vector<SungLine> lines_of(const Material& m) {
    std::vector<SungLine> lines(m.phrases.size());
    std::vector<std::vector<const SungNote*>> notes(m.phrases.size());
    for (const auto& n : m.notes)
        if (n.phrase >= 0) notes[static_cast<std::size_t>(n.phrase)].push_back(&n);

    std::size_t b = 0;
    for (std::size_t p = 0; p < lines.size(); ++p) {
        auto& line = lines[p];
        line.span = m.phrases[p]->span;
        line.notes = static_cast<int>(notes[p].size());
        while (b < m.breaths.size() && m.breaths[b]->span.start < line.span.start)
            ++b;
        for (std::size_t i = b; i < m.breaths.size() && m.breaths[i]->span.start < line.span.end + kBorder;
             ++i)
            line.breaths_inside += m.breaths[i]->inside_phrase ? 1 : 0;
        std::vector<double> levels;
        for (std::size_t i = 0; i < notes[p].size(); ++i) {
            levels.push_back(notes[p][i]->note->level.value());
            if (i == 0) continue;
            const double gap = (notes[p][i]->span().start - notes[p][i - 1]->span().end).value();
            line.gaps.push_back(std::max(0.0, gap));
            line.holes += gap >= kHole.value() ? 1 : 0;
        }
        if (levels.size() < kLeastForLevel) continue;
        line.level_spread = *percentile(levels, 0.9) - *percentile(levels, 0.1);
        const double last = levels.back();
        levels.pop_back();
        line.end_under = *median(levels) - last;
    }
    return lines;
}

} // namespace luft::profile
