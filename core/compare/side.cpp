#include "compare/side.h"

#include <algorithm>

namespace luft::compare {
namespace {

void put_in_order(Side& side) {
    const auto start = [](const auto& mark) { return mark.span.start; };
    std::ranges::stable_sort(side.notes, {}, start);
    std::ranges::stable_sort(side.phrases, {}, start);
    std::ranges::stable_sort(side.breaths, {}, start);
}

} // namespace

Side side_of(const marks::Analysis& analysis) {
    return {.duration = analysis.duration,
            .setting = analysis.setting,
            .tuning = analysis.tuning,
            .f0 = analysis.curves.f0,
            .level = analysis.curves.level,
            .cpp = analysis.curves.cpp,
            .h1h2 = analysis.curves.h1h2,
            .ring = analysis.curves.ring,
            .notes = analysis.notes,
            .phrases = analysis.phrases,
            .breaths = analysis.breaths,
            .harmony = {}};
}

Side side_of(const std::optional<project::Listening>& listening, const voice::Curves& curves,
             const std::vector<project::Mark>& marks) {
    Side side;
    side.f0 = curves.f0;
    side.level = curves.level, side.cpp = curves.cpp, side.h1h2 = curves.h1h2, side.ring = curves.ring;
    side.duration = kHop * static_cast<double>(curves.frames());
    for (const project::Mark& mark : marks) {
        if (mark.state == project::MarkState::dropped) continue;
        if (const auto* note = std::get_if<marks::Note>(&mark.what)) side.notes.push_back(*note);
        if (const auto* phrase = std::get_if<marks::Phrase>(&mark.what)) side.phrases.push_back(*phrase);
        if (const auto* breath = std::get_if<marks::Breath>(&mark.what)) side.breaths.push_back(*breath);
        side.duration = std::max(side.duration, mark.span().end);
    }
    if (listening) {
        side.setting = listening->setting;
        side.tuning = listening->tuning;
        side.duration = listening->duration;
    }
    put_in_order(side);
    return side;
}

} // namespace luft::compare
