#include "marks/breaths.h"

#include "base/text.h"
#include "marks/breath_manner.h"
#include "signal/statistics.h"

#include <algorithm>

namespace luft::marks {
namespace {

constexpr std::size_t kLeastInferredGap = 25; // frames
constexpr double kSure = 1.7;                 // logit of 0.85: breaths to learn the singer's manner from

struct Judged {
    NoiseEvent event;
    double logit;
};

/// The most breath-like event of each gap, by gap.
std::vector<std::optional<Judged>> best_of(const std::vector<NoiseEvent>& events,
                                           const std::vector<Gap>& gaps,
                                           const std::optional<BreathManner>& manner) {
    std::vector<std::optional<Judged>> best(gaps.size());
    for (const NoiseEvent& e : events) {
        const double logit = breath_logit(e, gaps[e.gap]) + (manner ? likeness(e, *manner) : 0);
        if (!best[e.gap] || best[e.gap]->logit < logit) best[e.gap] = Judged{e, logit};
    }
    return best;
}

Breath heard(const Judged& j, bool known) {
    const NoiseEvent& e = j.event;
    Breath b;
    b.span = {time_of({static_cast<std::int64_t>(e.begin)}), time_of({static_cast<std::int64_t>(e.end)})};
    b.evidence_kind = BreathEvidence::heard;
    b.below_voice = Decibels(e.below);
    b.confidence = {std::clamp(signal::logistic(j.logit), 0.05, 0.97)};
    b.evidence = "breath noise " + fixed(e.over_quiet, 0) + " dB over the quiet around it and " +
                 fixed(e.below, 0) + " dB under the singing, " + fixed(b.span.length().value(), 2) + " s" +
                 (known ? ", like the singer's other breaths" : "");
    return b;
}

Breath inferred(const Gap& gap, std::string_view what_covers_it) {
    const auto length = static_cast<double>(gap.length()) * kHop.value();
    const double breath = std::clamp(0.6 * length, 0.15, 0.45);
    const double end = static_cast<double>(gap.end) * kHop.value() - std::min(0.12, 0.2 * length);
    Breath b;
    b.span = {Seconds(end - breath), Seconds(end)};
    b.evidence_kind = BreathEvidence::inferred;
    b.confidence = {std::clamp(0.35 + 0.4 * std::min(length, 1.0), 0.3, 0.75)};
    b.evidence = "a gap of " + fixed(length, 2) + " s in the singing; " + std::string(what_covers_it) +
                 " covers the breath itself";
    return b;
}

} // namespace

std::vector<Breath> find_breaths(const voice::Hearing& hearing, const std::vector<Run>& runs) {
    const std::vector<Gap> gaps = gaps_between(runs, hearing.curves.frames());
    const auto events = noise_events(hearing, runs, gaps);
    auto best = best_of(events, gaps, std::nullopt);
    std::vector<NoiseEvent> sure;
    for (const auto& j : best)
        if (j && j->logit > kSure) sure.push_back(j->event);
    const auto manner = manner_of(sure);
    if (manner) best = best_of(events, gaps, manner);

    std::vector<Breath> found;
    for (std::size_t g = 0; g < gaps.size(); ++g) {
        const Gap& gap = gaps[g];
        if (best[g] && best[g]->logit > 0)
            found.push_back(heard(*best[g], manner && likeness(best[g]->event, *manner) > 0.5));
        else if (hearing.setting == voice::Setting::accompanied && gap.before_singing && gap.after_singing &&
                 gap.length() >= kLeastInferredGap)
            found.push_back(inferred(gap, "the accompaniment"));
    }
    return found;
}

} // namespace luft::marks
