#include "base/text.h"
#include "profile/proposals.h"
#include "profile/swing.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

using project::Verdict;

/// Heard around a note so that it stands in its line (no source).
constexpr Seconds kAroundNote{0.4};
/// Further off than this a single note is worth a stop (well over kHeardAsOff; no source).
constexpr Cents kClearlyOff{40};
/// A held note of this length with an even vibrato shows it well (no source).
constexpr Seconds kShowsVibrato{1.0};

Confidence both(Confidence a, Confidence b) {
    return {std::min(a.value, b.value)};
}

void edges(const Material& m, const SungNote& n, std::vector<Proposal>& to) {
    const auto& onset = n.note->onset;
    const auto& offset = n.note->offset;
    const auto with = [](const std::string& words, const std::string& evidence) {
        return evidence.empty() ? words : words + ": " + evidence;
    };
    const std::string name = Material::name(n);
    const Confidence at_start = both(n.note->confidence, onset.confidence);
    const Confidence at_end = both(n.note->confidence, offset.confidence);
    if (onset.kind == marks::OnsetKind::glottal)
        add_proposal(m, to, n.span(), kAroundNote, {"onset", "glottal"}, Verdict::explain, 0.75, at_start,
                     with(name + " starts with a glottal attack", onset.evidence));
    if (onset.kind == marks::OnsetKind::breathy)
        add_proposal(m, to, n.span(), kAroundNote, {"onset", "breathy"}, Verdict::explain, 0.7, at_start,
                     with(name + " starts with air before the tone", onset.evidence));
    // An even start is the more telling the higher and the longer the note.
    if (onset.kind == marks::OnsetKind::balanced && !n.joined_before && n.third == 2 &&
        n.length() >= kHeldNote)
        add_proposal(m, to, n.span(), kAroundNote, {"onset", "balanced"}, Verdict::strength, 0.5, at_start,
                     with(name + ", high in the range, speaks at once without click or air", onset.evidence));
    if (offset.kind == marks::OffsetKind::trailing && n.length() >= kHeldNote)
        add_proposal(m, to, n.span(), kAroundNote, {"offset", "trailing"}, Verdict::explain, 0.55, at_end,
                     with(name + " trails off", offset.evidence));
    if (offset.kind == marks::OffsetKind::clean && n.last_of_phrase && n.length() >= kShowsVibrato)
        add_proposal(
            m, to, n.span(), kAroundNote, {"offset", "clean"}, Verdict::strength, 0.4, at_end,
            with(name + " is held " + length_text(n.length()) + " and stops cleanly", offset.evidence));
}

void pitch(const Material& m, const SungNote& n, std::vector<Proposal>& to) {
    if (!long_enough_for_pitch(n)) return;
    const double off = n.note->cents.value(), size = std::abs(off), drift = n.note->drift.value();
    const std::string name = Material::name(n);
    if (size >= kClearlyOff.value())
        add_proposal(m, to, n.span(), kAroundNote, {"intonation", off > 0 ? "sharp" : "flat"}, Verdict::watch,
                     std::min(1.0, size / 50) * std::min(1.0, 0.5 + n.length().value()), n.note->confidence,
                     name + " lies " + off_pitch(n.note->cents) + " for " + length_text(n.length()));
    if (n.length() >= kHeldNote && std::abs(drift) >= kDrifting.value())
        add_proposal(m, to, n.span(), kAroundNote, {"intonation", "drifting"}, Verdict::watch,
                     std::min(0.9, std::abs(drift) / 70), n.note->confidence,
                     name + (drift > 0 ? " rises by " : " sinks by ") + fixed(std::abs(drift), 0) +
                         " cents while held for " + length_text(n.length()));
    if (n.note->scoop && n.note->scoop->value() >= kScooped.value())
        add_proposal(m, to, n.span(), kAroundNote, {"intonation", "scooped"}, Verdict::explain,
                     std::min(0.7, n.note->scoop->value() / 250), n.note->confidence,
                     name + " is reached from " + fixed(n.note->scoop->value(), 0) + " cents below");
}

void swing(const Material& m, const SungNote& n, std::vector<Proposal>& to) {
    if (!n.note->vibrato) return;
    const auto& v = *n.note->vibrato;
    const std::string words = Material::name(n) + " swings " + fixed(v.rate.value(), 1) +
                              " times a second, " + fixed(v.extent.value(), 0) + " cents either way, for " +
                              length_text(n.length());
    if (starts_straight(m.source.curves.f0, n.span()))
        add_proposal(m, to, n.span(), kAroundNote, {"vibrato", "late"}, Verdict::explain, 0.65,
                     n.note->confidence, words + "; it begins straight");
    if (v.extent > kWideVibrato)
        add_proposal(m, to, n.span(), kAroundNote, {"vibrato", "wide"}, Verdict::watch,
                     std::min(0.8, v.extent.value() / 200), n.note->confidence, words);
    else if (v.rate < kSlowVibrato || v.rate > kFastVibrato)
        add_proposal(m, to, n.span(), kAroundNote, {"vibrato", v.rate < kSlowVibrato ? "slow" : "fast"},
                     Verdict::explain, 0.55, n.note->confidence, words);
    else if (v.regularity >= kEvenVibrato && n.length() >= kShowsVibrato)
        add_proposal(m, to, n.span(), kAroundNote, {"vibrato", "even"}, Verdict::strength,
                     std::min(0.9, 0.4 + v.regularity / 3 + n.length().value() / 20), n.note->confidence,
                     words + ", evenly");
    else if (v.regularity < kEvenVibrato - 0.2 && n.length() >= kShowsVibrato)
        add_proposal(m, to, n.span(), kAroundNote, {"vibrato", "uneven"}, Verdict::watch, 0.5,
                     n.note->confidence, words + ", unevenly");
}

void level(const Material& m, const SungNote& n, std::vector<Proposal>& to) {
    if (n.length() < kHeldNote * 2) return;
    const double change = n.note->level_change.value();
    const std::string note = Material::name(n) + ", held " + length_text(n.length());
    const double held = std::min(0.2, n.length().value() / 20);
    if (n.note->shape == marks::LevelShape::swelling)
        add_proposal(m, to, n.span(), kAroundNote, {"dynamics", "swell"}, Verdict::strength, 0.6 + held,
                     n.note->confidence, note + ", swells and fades again");
    if (n.note->shape == marks::LevelShape::growing && change >= 4)
        add_proposal(m, to, n.span(), kAroundNote, {"dynamics", "crescendo"}, Verdict::explain,
                     std::min(0.7, change / 15 + held), n.note->confidence,
                     note + ", grows by " + fixed(change, 0) + " dB");
    if (n.note->shape == marks::LevelShape::fading && change <= -6)
        add_proposal(m, to, n.span(), kAroundNote, {"dynamics", "decrescendo"}, Verdict::explain,
                     std::min(0.6, -change / 20 + held), n.note->confidence,
                     note + ", fades by " + fixed(-change, 0) + " dB");
    if (n.note->shape == marks::LevelShape::fluctuating)
        add_proposal(m, to, n.span(), kAroundNote, {"dynamics", "fluctuating"}, Verdict::watch, 0.45 + held,
                     n.note->confidence, note + ", wavers in level");
}

} // namespace

void propose_from_notes(const Material& m, std::vector<Proposal>& to) {
    for (const auto& n : m.notes) {
        edges(m, n, to);
        pitch(m, n, to);
        swing(m, n, to);
        level(m, n, to);
    }
}

} // namespace luft::profile
