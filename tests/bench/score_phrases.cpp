// Phrases: starts and ends apart, each within 0.3 s (the design's figure; own choice). The lenient score
// forgives a boundary at a breath inside a phrase: whether a line goes on over a quick breath is a matter of
// taste.
#include "bench/score.h"

namespace luft::bench {
namespace {

constexpr double kWindow = 0.3;

std::vector<int> match_times(const std::vector<double>& there, const std::vector<double>& said) {
    return reference::match(there.size(), said.size(), [&](std::size_t t, std::size_t s) {
        return std::abs(there[t] - said[s]) <= kWindow;
    });
}

void score_side(reference::Score& strict, reference::Score& lenient, const std::vector<double>& there,
                const std::vector<double>& said, const std::vector<Span>& forgiven) {
    const auto matched = match_times(there, said);
    reference::Score score = reference::score_of(matched, said.size());
    strict += score;
    for (std::size_t s = 0; s < said.size(); ++s)
        if (std::ranges::count(matched, static_cast<int>(s)) == 0 &&
            std::ranges::any_of(forgiven, [&](Span f) { return f.contains(Seconds(said[s])); }))
            --score.said;
    lenient += score;
}

} // namespace

void score_phrases(Scores& to, const Truth& truth, const marks::Analysis& said) {
    if (!truth.phrases) return;
    std::vector<Span> forgiven;
    for (const TrueBreath& b : truth.breaths.value_or(std::vector<TrueBreath>{}))
        if (b.inside_phrase)
            forgiven.push_back({b.span.start - Seconds(kWindow), b.span.end + Seconds(kWindow)});
    std::vector<double> starts, ends, said_starts, said_ends;
    for (const Span& p : *truth.phrases)
        starts.push_back(p.start.value()), ends.push_back(p.end.value());
    for (const marks::Phrase& p : said.phrases)
        said_starts.push_back(p.span.start.value()), said_ends.push_back(p.span.end.value());
    score_side(to.phrase_starts, to.lenient_starts, starts, said_starts, forgiven);
    score_side(to.phrase_ends, to.lenient_ends, ends, said_ends, forgiven);
    for (std::size_t s = 0; s < said.phrases.size(); ++s)
        to.calibration["phrase"].add(said.phrases[s].confidence,
                                     std::ranges::any_of(*truth.phrases, [&](const Span& p) {
                                         return std::abs(p.start.value() - said_starts[s]) <= kWindow &&
                                                std::abs(p.end.value() - said_ends[s]) <= kWindow;
                                     }));
}

} // namespace luft::bench
