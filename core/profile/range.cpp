#include "profile/range.h"

#include "profile/statistics.h"

#include <algorithm>

namespace luft::profile {

std::optional<SungRange> range_of(const std::vector<SungNote>& notes) {
    if (notes.empty()) return std::nullopt;
    const auto [low, high] = std::ranges::minmax_element(notes, {}, &SungNote::written);
    std::vector<Weighted> pitches;
    for (const auto& note : notes)
        pitches.push_back({note.written.value(), note.length().value()});

    SungRange range{low->written, high->written, low->written, high->written, {}, false};
    range.tessitura_low = MidiPitch(weighted_percentile(pitches, 0.1).value_or(low->written.value()));
    range.tessitura_high = MidiPitch(weighted_percentile(pitches, 0.9).value_or(high->written.value()));
    const MidiPitch width = range.highest - range.lowest;
    range.thirds = {range.lowest + width / 3, range.highest - width / 3};
    range.divided = width.value() >= kLeastDivided;
    return range;
}

} // namespace luft::profile
