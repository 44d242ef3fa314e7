// Notes, and what they carry. Starts and pitches by the rules of MIREX note tracking
// (reference/note_metric.h; for singing Molina et al. 2014, ISMIR, "Evaluation framework for automatic
// singing transcription"). Onset kinds are asked of notes whose start was found; what belongs to the whole
// note (end, vibrato, vowel) of notes that share at least half of the true note's length.
#include "bench/score.h"

namespace luft::bench {
namespace {

std::vector<reference::TimedNote> timed(const auto& notes) {
    std::vector<reference::TimedNote> out;
    for (const auto& n : notes)
        out.push_back({n.span.start.value(), n.span.end.value(), frequency_of(n.pitch).value()});
    return out;
}

void score_starts(Scores& to, const std::vector<TrueNote>& there, const std::vector<marks::Note>& said) {
    using enum reference::NoteRule;
    const auto truth = timed(there), answer = timed(said);
    const auto started = reference::match_notes(truth, answer, onset);
    const auto pitched = reference::match_notes(truth, answer, onset_pitch);
    to.notes += reference::score_of(started, said.size());
    to.pitched_notes += reference::score_of(pitched, said.size());
    for (std::size_t s = 0; s < said.size(); ++s)
        to.calibration["note"].add(said[s].confidence, std::ranges::count(pitched, static_cast<int>(s)) > 0);
    for (std::size_t t = 0; t < there.size(); ++t) {
        if (started[t] < 0 || !there[t].onset) continue;
        const marks::Onset& given = said[static_cast<std::size_t>(started[t])].onset;
        to.onsets.add(static_cast<int>(*there[t].onset), static_cast<int>(given.kind));
        to.calibration["onset kind"].add(given.confidence, given.kind == *there[t].onset);
    }
}

void score_vowel(Scores& to, const TrueNote& there, const marks::Note& said) {
    // Formants are withheld above 400 Hz (docs/methods.md).
    if (!there.vowel || frequency_of(there.pitch) >= Hertz(400)) return;
    ++to.vowels.of;
    if (!said.vowel) return;
    ++to.vowels.part;
    to.f1_error.push_back(std::abs(said.vowel->f1 / there.vowel->f1 - 1));
    to.f2_error.push_back(std::abs(said.vowel->f2 / there.vowel->f2 - 1));
}

} // namespace

void score_notes(Scores& to, const Truth& truth, const marks::Analysis& said) {
    if (!truth.notes) return;
    const auto& there = *truth.notes;
    score_starts(to, there, said.notes);
    const auto matched = reference::match(there.size(), said.notes.size(), [&](std::size_t t, std::size_t s) {
        const Span a = there[t].span, b = said.notes[s].span;
        return std::min(a.end, b.end) - std::max(a.start, b.start) >= a.length() * 0.5;
    });
    if (truth.notes_in_full) {
        to.vibratos.said += static_cast<double>(
            std::ranges::count_if(said.notes, [](const marks::Note& n) { return n.vibrato.has_value(); }));
        to.vibratos.there += static_cast<double>(
            std::ranges::count_if(there, [](const TrueNote& n) { return n.vibrato.has_value(); }));
    }
    for (std::size_t t = 0; t < there.size(); ++t) {
        if (matched[t] < 0) continue;
        const TrueNote& a = there[t];
        const marks::Note& b = said.notes[static_cast<std::size_t>(matched[t])];
        score_vowel(to, a, b);
        if (a.offset) {
            to.offsets.add(static_cast<int>(*a.offset), static_cast<int>(b.offset.kind));
            to.calibration["offset kind"].add(b.offset.confidence, b.offset.kind == *a.offset);
        }
        if (!truth.notes_in_full || !a.vibrato || !b.vibrato) continue;
        ++to.vibratos.hits;
        to.vibrato_rate.push_back(std::abs((a.vibrato->rate - b.vibrato->rate).value()));
        to.vibrato_extent.push_back(std::abs((a.vibrato->extent - b.vibrato->extent).value()));
    }
}

} // namespace luft::bench
