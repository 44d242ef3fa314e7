#include "profile/findings.h"

#include "base/text.h"
#include "profile/words.h"

#include <algorithm>

namespace luft::profile {
namespace {

/// The program's own findings in each list; more would bury the main ones (no source). The coach's are all
/// listed.
constexpr std::size_t kMostOfOurs = 5;
constexpr std::size_t kMostDrills = 5;

std::string shade_names(const vocabulary::Vocabulary& vocabulary, const project::Moment& moment) {
    std::vector<std::string> names;
    for (const auto& tag : moment.shades) {
        const auto* facet = vocabulary.facet(tag.facet);
        const auto* shade = vocabulary.shade(tag);
        names.push_back((facet ? facet->name : tag.facet) + ": " + (shade ? shade->name : tag.shade));
    }
    return listed(names);
}

std::string sentence(std::string text) {
    if (!text.empty() && std::string_view(".!?").find(text.back()) == std::string_view::npos) text += '.';
    return text;
}

void add_drill(const vocabulary::Vocabulary& vocabulary, const Candidate& c, Profile& profile) {
    if (profile.practise.size() >= kMostDrills && c.finding.drill.empty()) return;
    const vocabulary::Drill* drill = vocabulary.drill(c.finding.drill);
    if (!drill && !c.finding.facet.empty()) {
        // A drill that the list already has is no second help: take the next one.
        for (const auto* candidate : vocabulary.drills_for({c.finding.facet, c.shade}))
            if (std::ranges::find(profile.drills, candidate->key, &vocabulary::Drill::key) ==
                profile.drills.end()) {
                drill = candidate;
                break;
            }
    }
    if (!drill) return;
    const auto* facet = vocabulary.facet(c.finding.facet);
    const auto* shade = vocabulary.shade({c.finding.facet, c.shade});
    Finding f = c.finding;
    f.drill = drill->key;
    f.words = drill->title + ", for " + (facet ? facet->name : c.finding.facet) +
              (shade ? " (" + shade->name + ")" : std::string()) + ". " + sentence(drill->aim);
    if (std::ranges::find(profile.drills, drill->key, &vocabulary::Drill::key) == profile.drills.end())
        profile.drills.push_back(*drill);
    profile.practise.push_back(std::move(f));
}

} // namespace

void add_coach_findings(const Source& source, std::vector<Candidate>& to) {
    for (const auto& moment : source.moments) {
        if (moment.state != project::MarkState::kept) continue;
        Candidate c;
        c.kind = moment.verdict == project::Verdict::strength ? FindingKind::strength : FindingKind::watch;
        if (!moment.shades.empty()) {
            c.finding.facet = moment.shades.front().facet;
            c.shade = moment.shades.front().shade;
        }
        const std::string said = !moment.remark.empty()     ? moment.remark
                                 : !moment.evidence.empty() ? moment.evidence
                                                            : shade_names(source.vocabulary, moment);
        c.finding.words = "At " + clock_text(moment.span.start) + ": " +
                          sentence(said.empty() ? "marked by the coach" : said);
        c.finding.examples.push_back({moment.span, shade_names(source.vocabulary, moment)});
        c.finding.coach = true;
        c.finding.drill = moment.drill;
        c.weight = 1;
        // A moment that only explains isn't on a list, but a drill that the coach gave it is.
        if (moment.verdict == project::Verdict::explain && moment.drill.empty()) continue;
        if (moment.verdict == project::Verdict::explain) c.weight = -1;
        to.push_back(std::move(c));
    }
}

void fill_lists(const vocabulary::Vocabulary& vocabulary, std::vector<Candidate> candidates,
                Profile& profile) {
    std::ranges::stable_sort(candidates, [](const Candidate& a, const Candidate& b) {
        if (a.finding.coach != b.finding.coach) return a.finding.coach;
        return a.weight > b.weight;
    });
    for (const auto kind : {FindingKind::strength, FindingKind::watch}) {
        auto& list = kind == FindingKind::strength ? profile.strengths : profile.watch;
        std::size_t ours = 0;
        for (const auto& c : candidates) {
            if (c.kind != kind || c.weight < 0) continue;
            if (!c.finding.coach && ours++ >= kMostOfOurs) continue;
            Finding f = c.finding;
            f.drill.clear();
            list.push_back(std::move(f));
        }
    }
    for (const auto& c : candidates)
        if (c.kind == FindingKind::watch || !c.finding.drill.empty()) add_drill(vocabulary, c, profile);
}

} // namespace luft::profile
