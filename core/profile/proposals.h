// Places that may be worth speaking about, before the most telling of them are chosen.
#pragma once

#include "profile/material.h"

#include <string>
#include <vector>

namespace luft::profile {

/// One place that shows one shade.
struct Proposal {
    Span span; ///< what shows it, with a little around it to be heard in
    Span core; ///< the mark itself
    vocabulary::Tag tag;
    project::Verdict verdict = project::Verdict::explain;
    std::string words; ///< what was measured; no full stop
    Confidence confidence;
    double telling = 0; ///< 0 to 1: how clearly it shows the shade
};

void propose_from_notes(const Material& m,
                        std::vector<Proposal>& to); ///< starts, ends, pitch, vibrato, level
void propose_from_lines(const Material& m, std::vector<Proposal>& to);  ///< breaths, phrases, switches
void propose_from_colour(const Material& m, std::vector<Proposal>& to); ///< hints: closure, ring

/// Adds a proposal whose span is the mark with `around` on both sides, inside the recording.
void add_proposal(const Material& m, std::vector<Proposal>& to, Span mark, Seconds around,
                  vocabulary::Tag tag, project::Verdict verdict, double telling, Confidence confidence,
                  std::string words);

} // namespace luft::profile
