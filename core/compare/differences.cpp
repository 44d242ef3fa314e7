#include "compare/differences.h"

#include "compare/differ.h"

#include <algorithm>

namespace luft::compare {

std::vector<Difference> find_differences(const Side& a, const Side& b, const Alignment& alignment,
                                         const Counterparts& counterparts, const Wording& wording) {
    Found found;
    if (alignment.stretches.empty()) return found;
    const Both both{a,
                    b,
                    alignment,
                    counterparts,
                    wording,
                    errors_between(a.setting, b.setting),
                    colour_errors(alignment.semitones)};
    whole_differences(both, found);
    breath_differences(both, found);
    phrase_differences(both, found);
    register_differences(both, found);
    edge_differences(both, found);
    vibrato_differences(both, found);
    intonation_differences(both, found);
    note_manner_differences(both, found);
    colour_differences(both, found);
    level_differences(both, found);
    tempo_differences(both, found);
    note_differences(both, found);
    std::ranges::stable_sort(found, {}, [](const Difference& d) { return d.a ? d.a->start : Seconds(-1); });
    return found;
}

} // namespace luft::compare
