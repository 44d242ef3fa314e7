#include "profile/propose.h"

#include "base/text.h"
#include "profile/proposals.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace luft::profile {
namespace {

// How choosing spreads the moments: each one chosen makes its like less attractive. Weights without a source;
// they rank, and nothing rests on their exact size.
constexpr double kSameFacet = 0.55;
constexpr double kSameShade = 0.6;
constexpr double kSameQuarter = 0.85;
constexpr double kNearby = 0.4;
constexpr Seconds kNear{5};

std::string how_sure(Confidence c) {
    const char* words = c.value >= 0.85 ? "quite sure" : c.value >= 0.7 ? "fairly sure" : "not very sure";
    return std::string(words) + " (" + fixed(c.value, 2) + ")";
}

project::Moment moment_of(const Source& source, const Proposal& p) {
    project::Moment m;
    m.performance = source.performance.id;
    m.span = p.span;
    m.state = project::MarkState::proposed;
    m.origin = project::Origin::detected;
    m.verdict = p.verdict;
    m.confidence = p.confidence;
    m.shades = {p.tag};
    const auto* facet = source.vocabulary.facet(p.tag.facet);
    const bool hint = facet && facet->basis == vocabulary::Basis::hint;
    m.evidence = capital(p.words) + (hint ? "; only a hint, " : "; ") + how_sure(p.confidence) + ".";
    if (p.verdict == project::Verdict::watch)
        if (const auto drills = source.vocabulary.drills_for(p.tag); !drills.empty())
            m.drill = drills.front()->key;
    return m;
}

/// True when two marks share more than half of the longer one.
bool same_place(Span a, Span b) {
    const Seconds shared = std::min(a.end, b.end) - std::max(a.start, b.start);
    return a == b || shared > std::max(a.length(), b.length()) / 2;
}

/// True when the coach already has a moment there that says the same.
bool known(const Source& source, const Proposal& p) {
    return std::ranges::any_of(source.moments, [&](const project::Moment& m) {
        return m.state == project::MarkState::kept && m.span.overlaps(p.span) &&
               std::ranges::find(m.shades, p.tag) != m.shades.end();
    });
}

} // namespace

void add_proposal(const Material& m, std::vector<Proposal>& to, Span mark, Seconds around,
                  vocabulary::Tag tag, project::Verdict verdict, double telling, Confidence confidence,
                  std::string words) {
    Span span{std::max(Seconds(0), mark.start - around), mark.end + around};
    if (m.duration > mark.end) span.end = std::min(span.end, m.duration);
    to.push_back({span, mark, std::move(tag), verdict, std::move(words), confidence, telling});
}

std::vector<project::Moment> propose_moments(const Source& source, int most) {
    const Material m(source);
    std::vector<Proposal> all;
    propose_from_notes(m, all);
    propose_from_lines(m, all);
    propose_from_colour(m, all);
    std::erase_if(all, [&](const Proposal& p) {
        return !source.vocabulary.shade(p.tag) || known(source, p) || !std::isfinite(p.telling);
    });
    std::ranges::stable_sort(all, {}, [](const Proposal& p) {
        return std::tuple(p.span.start, p.span.end, p.tag.facet, p.tag.shade);
    });
    std::vector<double> worth;
    for (const auto& p : all)
        worth.push_back(p.telling * std::clamp(p.confidence.value, 0.0, 1.0));

    std::vector<project::Moment> chosen;
    while (static_cast<int>(chosen.size()) < most) {
        const auto best = std::ranges::max_element(worth);
        if (best == worth.end() || *best <= 0) break;
        const auto& p = all[static_cast<std::size_t>(best - worth.begin())];
        chosen.push_back(moment_of(source, p));
        const int quarter = m.quarter_of(p.core.middle());
        for (std::size_t i = 0; i < all.size(); ++i) {
            const auto& q = all[i];
            if (same_place(q.core, p.core)) worth[i] = 0; // one thing to say about one place
            if (q.tag.facet == p.tag.facet) worth[i] *= kSameFacet;
            if (q.tag == p.tag) worth[i] *= kSameShade;
            if (m.quarter_of(q.core.middle()) == quarter) worth[i] *= kSameQuarter;
            const Seconds apart = std::max(q.span.start - p.span.end, p.span.start - q.span.end);
            if (apart < kNear) worth[i] *= kNearby;
        }
    }
    std::ranges::stable_sort(chosen, {}, [](const project::Moment& x) { return x.span.start; });
    return chosen;
}

} // namespace luft::profile
