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

std::vector<Judged> judge(const std::vector<NoiseEvent>& events, const std::vector<Gap>& gaps,
                          const std::optional<BreathManner>& manner) {
    std::vector<Judged> judged;
    for (const NoiseEvent& e : events)
        judged.push_back({e, calibrated(breath_logit(e, gaps[e.gap]) + (manner ? likeness(e, *manner) : 0))});
    return judged;
}

/// One breath may waver and look like several: likely ones that stand within 80 ms are one. Of those that
/// stay apart, each gap keeps the likeliest, and further ones that are sure and 150 ms away.
std::vector<Judged> breaths_of(std::vector<Judged> likely) {
    constexpr std::size_t kJoined = 8, kApart = 15; // frames
    std::erase_if(likely, [](const Judged& j) { return j.logit <= 0; });
    std::vector<Judged> joined;
    for (const Judged& j : likely) {
        if (joined.empty() || joined.back().event.gap != j.event.gap ||
            j.event.begin > joined.back().event.end + kJoined) {
            joined.push_back(j);
            continue;
        }
        Judged& last = joined.back();
        const std::size_t begin = last.event.begin;
        if (j.logit > last.logit) last = j;
        last.event.begin = begin;
        last.event.end = j.event.end;
    }
    std::vector<Judged> kept;
    for (const Judged& j : joined) {
        if (kept.empty() || kept.back().event.gap != j.event.gap ||
            (std::min(j.logit, kept.back().logit) > kSure && j.event.begin >= kept.back().event.end + kApart))
            kept.push_back(j);
        else if (j.logit > kept.back().logit)
            kept.back() = j;
    }
    return kept;
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

Breath inferred(const Gap& gap) {
    const auto length = static_cast<double>(gap.length()) * kHop.value();
    const double breath = std::clamp(0.6 * length, 0.15, 0.45);
    const double end = static_cast<double>(gap.end) * kHop.value() - std::min(0.12, 0.2 * length);
    Breath b;
    b.span = {Seconds(end - breath), Seconds(end)};
    b.evidence_kind = BreathEvidence::inferred;
    b.confidence = {std::clamp(0.35 + 0.4 * std::min(length, 1.0), 0.3, 0.75)};
    b.evidence =
        "a gap of " + fixed(length, 2) + " s in the singing; the accompaniment covers the breath itself";
    return b;
}

} // namespace

std::vector<Breath> find_breaths(const voice::Hearing& hearing, const std::vector<Run>& runs) {
    const std::vector<Gap> gaps = gaps_between(runs, hearing.curves.frames());
    const auto events = noise_events(hearing, runs, gaps);
    auto taken = breaths_of(judge(events, gaps, std::nullopt));
    std::vector<NoiseEvent> sure;
    for (const Judged& j : taken)
        if (j.logit > kSure) sure.push_back(j.event);
    const auto manner = manner_of(sure);
    if (manner) taken = breaths_of(judge(events, gaps, manner));

    std::vector<Breath> found;
    auto next = taken.begin();
    for (std::size_t g = 0; g < gaps.size(); ++g) {
        const Gap& gap = gaps[g];
        if (next != taken.end() && next->event.gap == g) {
            for (; next != taken.end() && next->event.gap == g; ++next)
                found.push_back(heard(*next, manner && likeness(next->event, *manner) > 0.5));
            continue;
        }
        if (hearing.setting == voice::Setting::accompanied && gap.before_singing && gap.after_singing &&
            gap.length() >= kLeastInferredGap)
            found.push_back(inferred(gap));
    }
    return found;
}

} // namespace luft::marks
