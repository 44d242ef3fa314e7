// Opening and closing: what stands before and after the stops.
#include "base/text.h"
#include "script/others.h"
#include "script/phrases.h"
#include "script/spoken.h"
#include "script/title.h"
#include "script/wording.h"

#include <algorithm>
#include <cctype>
#include <set>

namespace luft::script {
namespace {

using project::Moment;
using project::ScriptItem;
using project::ScriptItemKind;
using project::Verdict;

constexpr std::size_t kMostFacets = 3; ///< more are not remembered
constexpr std::size_t kMostNouns = 4;
constexpr std::size_t kMostDrills = 3;

std::string quoted(const std::string& text) {
    return "“" + one_line(text) + "”";
}

std::string times(int n) {
    return n == 1 ? "once" : n == 2 ? "twice" : spoken_number(n) + " times";
}

/// Names of the facets that come up most, those of the vocabulary's order first among equals.
std::vector<std::string> main_facets(const Source& source, const std::vector<const Moment*>& moments) {
    std::vector<std::pair<int, std::string>> counted;
    for (const auto& facet : source.vocabulary.facets) {
        const auto count = std::ranges::count_if(moments, [&](const Moment* m) {
            return std::ranges::any_of(m->shades, [&](const auto& tag) { return tag.facet == facet.key; });
        });
        if (count == 0) continue;
        std::string name = one_line(facet.name);
        if (!name.empty()) name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
        counted.emplace_back(static_cast<int>(count), name);
    }
    std::ranges::stable_sort(counted, std::greater{}, [](const auto& c) { return c.first; });
    std::vector<std::string> names;
    for (const auto& [count, name] : counted)
        if (names.size() < kMostFacets) names.push_back(name);
    return names;
}

/// Two stops at one place are one halt.
int halts_of(const std::vector<ScriptItem>& middle) {
    std::set<Seconds> halts;
    for (const ScriptItem& item : middle)
        if (item.kind == ScriptItemKind::stop) halts.insert(item.at);
    return static_cast<int>(halts.size());
}

} // namespace

std::string Wording::spoken_name(const project::Performance& other) const {
    const auto sings_here = [&](const project::Performance& p) {
        return p.id != other.id && p.performer == other.performer;
    };
    const bool one_of_two = sings_here(source_.performance) ||
                            std::ranges::any_of(source_.others, sings_here, &Other::performance);
    return other.performer.empty() || one_of_two ? "the performance " + quoted(other.label)
                                                 : one_line(other.performer);
}

std::string Wording::compared(const std::vector<ScriptItem>& middle) const {
    std::vector<std::string> names;
    for (const ScriptItem& item : middle) {
        const bool quotes = item.kind == ScriptItemKind::stop && item.quote;
        const Other* other = quotes ? other_of(source_, item.quote->performance) : nullptr;
        if (!other) continue;
        const std::string name = spoken_name(other->performance);
        if (std::ranges::find(names, name) == names.end()) names.push_back(name);
    }
    return names.empty() ? std::string() : " Beside it we hear a little of " + listed(names) + ".";
}

std::string Wording::opening(const std::vector<const Moment*>& moments,
                             const std::vector<ScriptItem>& middle) {
    const auto& piece = source_.piece;
    const auto& performance = source_.performance;
    std::string text = "Welcome. ";
    if (performance.performer.empty())
        text += "We listen to a performance of " + quoted(piece.title);
    else
        text += "We listen to " + one_line(performance.performer) + " singing " + quoted(piece.title);
    if (!piece.writer.empty()) text += ", written by " + one_line(piece.writer);
    text += ".";
    if (performance.source.find("://") != std::string::npos)
        text += " Where the recording comes from stands in the description.";
    else if (!performance.source.empty())
        text += " About the recording: " + sentence(one_line(performance.source));
    const auto facets = main_facets(source_, moments);
    if (!facets.empty()) text += " Listen with me for " + listed(facets) + ".";
    text += compared(middle);
    const int halts = halts_of(middle);
    if (halts > 0) text += " I halt the recording " + times(halts) + ", and then we let it go on.";
    return text;
}

std::string Wording::nouns(const std::vector<const Moment*>& moments, Verdict verdict) {
    std::vector<std::string> parts;
    std::vector<std::string> hints;
    for (const Moment* m : moments) {
        if (m->verdict != verdict) continue;
        for (const auto& tag : m->shades) {
            const auto* facet = source_.vocabulary.facet(tag.facet);
            auto& list = facet && facet->basis == vocabulary::Basis::hint ? hints : parts;
            const std::string name = one_line(noun(source_.vocabulary, tag).with_article());
            if (list.size() < kMostNouns && std::ranges::find(list, name) == list.end()) list.push_back(name);
        }
    }
    if (hints.empty()) return parts.empty() ? std::string() : listed(parts) + ".";
    return (parts.empty() ? "" : listed(parts) + ", and ") + "as far as a recording can tell, " +
           listed(hints) + ".";
}

std::vector<std::string> Wording::drills_to_take_home(const std::vector<const Moment*>& moments) {
    std::vector<std::string> titles;
    const auto take = [&](const vocabulary::Drill* drill) {
        if (!drill || titles.size() == kMostDrills) return;
        const std::string title = quoted(drill->title);
        if (std::ranges::find(titles, title) == titles.end()) titles.push_back(title);
    };
    for (const Moment* m : moments)
        take(source_.vocabulary.drill(m->drill));
    if (!titles.empty()) return titles;
    for (const Moment* m : moments) { // none was chosen: what the drill book has for the first thing to watch
        if (m->verdict != Verdict::watch || !titles.empty()) continue;
        for (const auto& tag : m->shades) {
            const auto drills = source_.vocabulary.drills_for(tag);
            if (!drills.empty() && titles.empty()) take(drills.front());
        }
    }
    return titles;
}

std::string Wording::closing(const std::vector<const Moment*>& moments) {
    std::string text = "That was " + quoted(source_.piece.title) + ".";
    const std::string performer = one_line(source_.performance.performer);
    const std::string strengths = nouns(moments, Verdict::strength);
    const std::string watch = nouns(moments, Verdict::watch);
    if (!strengths.empty())
        text += " What " + (performer.empty() ? "the singer" : performer) + " does well: " + strengths;
    if (!watch.empty())
        text += std::string(strengths.empty() ? " What" : " And what") + " I would watch: " + watch;
    const auto drills = drills_to_take_home(moments);
    if (drills.size() == 1) text += " If you want to practise, take one drill home: " + drills.front() + ".";
    if (drills.size() > 1)
        text += " If you want to practise, choose one of these drills: " + listed(drills) + ".";
    if (!drills.empty())
        text += " Keep it easy, and stop when anything hurts. A voice that stays hoarse for three weeks "
                "belongs to a doctor.";
    return text + " Thank you for listening.";
}

} // namespace luft::script
