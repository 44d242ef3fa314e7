#include "profile/facets.h"
#include "profile/findings.h"
#include "profile/headline.h"
#include "profile/profile.h"
#include "profile/words.h"

namespace luft::profile {
namespace {

void add_facet(const Material& m, const vocabulary::Facet& facet, Profile& to,
               std::vector<Candidate>& candidates) {
    Draft d(m, facet.key);
    if (const auto work = facet_work(facet.key)) work(m, d);
    d.tally.add_tags();

    FacetProfile out;
    out.key = facet.key;
    out.name = facet.name;
    out.basis = facet.basis;
    out.shades = d.tally.shares();
    out.axes = d.tally.axes();
    out.measures = std::move(d.measures);
    out.hints = std::move(d.hints);
    out.best = d.tally.best(d.good);
    out.counter = d.tally.best(d.contrast);
    int tagged = 0;
    for (const auto& shade : out.shades)
        tagged += shade.by_coach;
    if (facet.basis == vocabulary::Basis::coach && tagged > 0)
        d.say("The coach's judgement: " + counted(tagged, "tagged place") + ".");
    else if (tagged > 0)
        d.say(capital(counted(tagged, "place is", "places are")) + " tagged or confirmed by the coach.");
    for (const auto& s : d.sentences)
        out.summary += (out.summary.empty() ? "" : " ") + s;
    if (out.summary.empty() && out.shades.empty() && out.measures.empty()) return;
    to.facets.push_back(std::move(out));
    for (auto& c : d.candidates)
        candidates.push_back(std::move(c));
}

} // namespace

FacetWork facet_work(const std::string& key) {
    static constexpr std::pair<const char*, FacetWork> kWork[] = {
        {"onset", onsets},          {"offset", offsets},      {"vowel-shape", vowel_shape},
        {"larynx", larynx},         {"dynamics", dynamics},   {"register", registers},
        {"closure", closure},       {"resonance", resonance}, {"breath", breaths},
        {"intonation", intonation}, {"vibrato", vibrato},     {"phrasing", phrasing},
    };
    for (const auto& [name, work] : kWork)
        if (key == name) return work;
    return nullptr;
}

Profile make_profile(const Source& source) {
    const Material m(source);
    Profile p;
    p.piece = source.piece.title;
    p.label = source.performance.label;
    p.performer = source.performance.performer;
    p.source = source.performance.source;
    p.permission = source.performance.permission;
    p.listening = source.listening;
    p.range = m.range;
    p.quarters = m.quarters;
    p.sung = m.sung;
    p.duration = m.duration;
    p.notes = static_cast<int>(m.notes.size());
    p.breaths = static_cast<int>(m.breaths.size());
    p.phrases = static_cast<int>(m.phrases.size());
    p.switches = static_cast<int>(m.switches.size());
    p.left_out = m.left_out;

    std::vector<Candidate> candidates;
    for (const auto& facet : source.vocabulary.facets)
        add_facet(m, facet, p, candidates);
    add_coach_findings(source, candidates);
    fill_lists(source.vocabulary, std::move(candidates), p);
    p.headline = headline(m, p);
    return p;
}

} // namespace luft::profile
