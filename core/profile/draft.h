// What one facet's file hands on: tally, measures, sentences, and what it finds worth saying.
#pragma once

#include "profile/measure.h"
#include "profile/tally.h"

#include <string>
#include <vector>

namespace luft::profile {

enum class FindingKind { strength, watch };

/// A finding that may go into a list. The weightier go first.
struct Candidate {
    FindingKind kind = FindingKind::watch;
    Finding finding;
    std::string shade; ///< key; what a drill is looked for by; may be empty
    double weight = 0; ///< 0 to 1: how much of the performance it touches and how clearly
};

struct Draft {
    Draft(const Material& material, const std::string& facet) : tally(material, facet), facet_key(facet) {}

    Tally tally;
    std::string facet_key;
    std::vector<Measure> measures;
    std::vector<std::string> sentences;
    std::vector<FacetHint> hints;
    std::string good;     ///< shade whose clearest occurrence shows the facet done well
    std::string contrast; ///< shade whose clearest occurrence is set against it
    std::vector<Candidate> candidates;

    void say(std::string sentence) { sentences.push_back(std::move(sentence)); }

    void find(FindingKind kind, const std::string& shade, double weight, std::string words,
              const std::optional<Example>& example = {}, bool hint = false) {
        Candidate c{kind, {facet_key, std::move(words), {}, hint, false, {}}, shade, weight};
        if (example) c.finding.examples.push_back(*example);
        candidates.push_back(std::move(c));
    }
};

} // namespace luft::profile
