#include "base/text.h"
#include "profile/crossing.h"
#include "profile/lines.h"
#include "profile/phrase_shapes.h"
#include "profile/proposals.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <algorithm>

namespace luft::profile {
namespace {

using project::Verdict;

/// Heard before and after a breath or a switch, so that the line around it is (no source).
constexpr Seconds kAroundBreath{1.2};
constexpr Seconds kAroundSwitch{1.0};
/// A breath nearer than this to the level of the voice is loud (as in the breath facet).
constexpr double kLoudBreath = 20;

void breaths(const Material& m, std::vector<Proposal>& to) {
    for (const auto* b : m.breaths) {
        std::string words = "breath of " + length_text(b->span.length());
        if (b->evidence_kind == marks::BreathEvidence::inferred)
            words += ", inferred from the gap";
        else if (b->below_voice)
            words += ", " + fixed(b->below_voice->value(), 0) + " dB under the voice";
        if (b->inside_phrase)
            add_proposal(m, to, b->span, kAroundBreath, {"breath", "mid-phrase"}, Verdict::watch, 0.85,
                         b->confidence, words + ", taken while the line goes on");
        else if (b->below_voice && b->below_voice->value() < kLoudBreath)
            add_proposal(m, to, b->span, kAroundBreath, {"breath", "audible"}, Verdict::explain, 0.55,
                         b->confidence, words + ", plainly to be heard");
        else if (b->evidence_kind == marks::BreathEvidence::heard)
            add_proposal(m, to, b->span, kAroundBreath, {"breath", "well-placed"}, Verdict::strength,
                         std::min(0.6, 0.35 + b->span.length().value() / 4), b->confidence,
                         words + ", taken where the line pauses");
    }
}

void phrases(const Material& m, std::vector<Proposal>& to) {
    const auto lines = lines_of(m);
    for (std::size_t p = 0; p < lines.size(); ++p) {
        const auto& line = lines[p];
        const std::string words =
            "phrase of " + length_text(line.span.length()) + " and " + counted(line.notes, "note");
        const Confidence sure = m.phrases[p]->confidence;
        if (line.broken())
            add_proposal(m, to, line.span, Seconds(0.2), {"phrasing", "broken"}, Verdict::watch, 0.6, sure,
                         words + ", with " + counted(line.breaths_inside, "breath") + " and " +
                             counted(line.holes, "hole") + " inside it");
        else if (line.span.length() >= kLongLine)
            add_proposal(
                m, to, line.span, Seconds(0.2), {"phrasing", "long-line"}, Verdict::strength,
                std::min(0.9, line.span.length() / kLongLine * 0.5), sure,
                words + " on one breath" +
                    (line.level_spread ? ", level within " + fixed(*line.level_spread, 0) + " dB" : ""));
        else if (line.even() && line.notes >= 5)
            add_proposal(m, to, line.span, Seconds(0.2), {"phrasing", "even"}, Verdict::strength, 0.45, sure,
                         words + ", level within " + fixed(*line.level_spread, 0) + " dB to the last note");
    }
}

/// Only what a listener can't miss (no source).
constexpr double kPlainChange = 6;
constexpr double kPlainRise = 4.5;

void levels(const Material& m, std::vector<Proposal>& to) {
    const auto shapes = phrase_shapes(m);
    for (std::size_t p = 0; p < shapes.size(); ++p) {
        if (!shapes[p]) continue;
        using enum marks::LevelShape;
        const marks::PhraseLevel& level = *shapes[p];
        const bool swells = level.shape == swelling;
        if (!swells && level.shape != growing && level.shape != fading) continue;
        const double size = std::abs((swells ? level.rise : level.change).value());
        if (size < (swells ? kPlainRise : kPlainChange)) continue;
        const Confidence sure{std::min(level.confidence.value, m.phrases[p]->confidence.value)};
        add_proposal(m, to, m.phrases[p]->span, Seconds(0.2), {"dynamics", shade_of(level.shape)},
                     swells ? Verdict::strength : Verdict::explain, std::min(0.6, 0.25 + size / 40), sure,
                     "phrase of " + length_text(m.phrases[p]->span.length()) + ", " + shape_words(level));
    }
}

void switches(const Material& m, std::vector<Proposal>& to) {
    for (const auto* s : m.switches) {
        const auto crossing = crossing_of(m.source.curves, *s);
        if (crossing == Crossing::unknown) continue;
        const auto* near = m.note_near(s->time);
        const std::string words = std::string("the voice seems to change from ") +
                                  (s->from == marks::Register::chest ? "chest to head" : "head to chest") +
                                  " register" + (near ? " near " + Material::name(*near) : "");
        const bool broken = crossing == Crossing::broken;
        add_proposal(m, to, {s->time, s->time}, kAroundSwitch,
                     {"register", broken ? "switch-break" : "switch-smooth"},
                     broken ? Verdict::watch : Verdict::strength, broken ? 0.85 : 0.75, s->confidence,
                     words + (broken ? ", with a hole in the sound" : ", without a hole in the sound"));
    }
}

} // namespace

void propose_from_lines(const Material& m, std::vector<Proposal>& to) {
    breaths(m, to);
    phrases(m, to);
    levels(m, to);
    switches(m, to);
}

} // namespace luft::profile
