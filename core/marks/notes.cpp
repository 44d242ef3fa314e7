#include "marks/notes.h"

#include "base/text.h"
#include "marks/edges.h"
#include "marks/vibrato.h"
#include "marks/vowels.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

std::span<const float> steady_part(std::span<const float> line, const Run& note) {
    const std::size_t skip = note.length() / 5;
    return line.subspan(note.begin + skip, std::max<std::size_t>(note.length() - 2 * skip, 1));
}

/// Pitch at the end minus pitch at the start of the steady part, of a fitted line.
Cents drift_of(std::span<const float> steady) {
    const auto line = signal::fit_line(steady);
    return line ? Cents(100 * line->slope * static_cast<double>(steady.size())) : Cents(0);
}

/// How far under its steady pitch a note starts, when it does so for 40 ms or more: a scoop. Only notes that
/// come out of silence; a joined note starts at the one before.
std::optional<Cents> scoop_of(std::span<const float> line, const Run& note, std::size_t silent_before,
                              MidiPitch steady) {
    constexpr std::size_t kLook = 20;
    if (silent_before < 5 || note.length() < kLook) return std::nullopt;
    const auto start = line.subspan(note.begin + 1, kLook - 1);
    std::size_t under = 0;
    double deepest = 0;
    for (const float p : start) {
        const double cents = 100 * (steady.value() - p);
        if (cents < 35) break;
        deepest = std::max(deepest, cents);
        ++under;
    }
    // Deeper than a fourth it is no scoop but another note, or a slip of the pitch track (common practice, no
    // source).
    constexpr double kDeepest = 500;
    if (under < 4 || deepest > kDeepest) return std::nullopt;
    return Cents(deepest);
}

/// Where the level under 1.2 kHz is lowest in the 50 ms before a note: what lies before is the tail of
/// another.
Seconds quietest_before(const voice::Texture& texture, const Run& note) {
    constexpr std::size_t kReach = 5 * voice::kFinePerFrame;
    const std::size_t end = std::min(note.begin * voice::kFinePerFrame, texture.low().size());
    const std::size_t from = end > kReach ? end - kReach : 0;
    const auto smooth = signal::running_mean(texture.low().subspan(from, end - from), 4);
    const auto lowest = static_cast<std::size_t>(std::ranges::min_element(smooth) - smooth.begin());
    return voice::kFineHop * static_cast<double>(from + lowest);
}

LevelShape shape_of(std::span<const float> level, Decibels& change) {
    change = Decibels(0);
    const std::size_t skip = level.size() / 10;
    const auto part = level.subspan(skip, level.size() - 2 * skip);
    const auto smooth = signal::running_mean(part, 8);
    const auto line = signal::fit_line(smooth);
    if (!line || part.size() < 30) return LevelShape::steady;
    change = Decibels(line->slope * static_cast<double>(part.size()));
    constexpr double kHeard =
        4; // dB; a change of level that a listener notices over a note (common practice, no source)
    const std::size_t third = smooth.size() / 3;
    const auto mean_of = [&](std::size_t from) {
        return signal::mean(std::span<const float>(smooth).subspan(from, third)).value_or(0);
    };
    const double first = mean_of(0), middle = mean_of(third), last = mean_of(2 * third);
    if (middle - std::max(first, last) > 0.75 * kHeard) return LevelShape::swelling;
    if (change.value() > kHeard) return LevelShape::growing;
    if (change.value() < -kHeard) return LevelShape::fading;
    const double spread =
        signal::quantile(smooth, 0.9).value_or(0) - signal::quantile(smooth, 0.1).value_or(0);
    return spread > 2 * kHeard ? LevelShape::fluctuating : LevelShape::steady;
}

std::string describe(const Note& n) {
    std::string words = note_name(n.pitch) + " held for " + fixed(n.span.length().value(), 2) + " s, " +
                        fixed(std::abs(n.cents.value()), 0) + " cents " +
                        (n.cents.value() < 0 ? "under" : "over") + " the note";
    if (n.vibrato)
        words += ", vibrato " + fixed(n.vibrato->rate.value(), 1) + " Hz and +-" +
                 fixed(n.vibrato->extent.value(), 0) + " cents";
    if (n.scoop) words += ", started " + fixed(n.scoop->value(), 0) + " cents below";
    return words;
}

} // namespace

MidiPitch steady_pitch(std::span<const float> pitch, const Run& note) {
    const auto part = steady_part(pitch, note);
    // A held note swings around its pitch; the mean over the swing is what is heard (Timmers & Desain 2000),
    // and the median keeps glides out.
    return MidiPitch(signal::median(part).value_or(0));
}

std::vector<Note> measure_notes(const voice::Hearing& hearing, const std::vector<Run>& cut,
                                const std::vector<float>& pitch, Hertz tuning) {
    std::vector<Note> notes;
    const MidiPitch offset = pitch_of(tuning) - MidiPitch(69);
    for (std::size_t k = 0; k < cut.size(); ++k) {
        const Run& run = cut[k];
        const std::size_t before = k == 0 ? run.begin : run.begin - cut[k - 1].end;
        const std::size_t after = (k + 1 < cut.size() ? cut[k + 1].begin : hearing.curves.frames()) - run.end;
        const auto steady = steady_part(pitch, run);
        Note n;
        n.span = {time_of({static_cast<std::int64_t>(run.begin)}),
                  time_of({static_cast<std::int64_t>(run.end)})};
        if (before >= 5)
            if (const auto start = measure_start(hearing.texture, run, before))
                n.span.start =
                    std::clamp(start->begins,
                               std::max(n.span.start - Seconds(0.05), quietest_before(hearing.texture, run)),
                               n.span.start + Seconds(0.05));
        n.pitch = steady_pitch(pitch, run);
        n.cents = off_semitone(n.pitch - offset);
        n.drift = drift_of(steady);
        n.scoop = scoop_of(pitch, run, before, n.pitch);
        n.vibrato = find_vibrato(std::span<const float>(pitch).subspan(run.begin, run.length()));
        n.onset = judge_onset(hearing, run, before);
        n.offset = judge_offset(hearing, run, after);
        n.vowel = find_vowel(hearing.curves, run);
        n.level = Decibels(signal::median(steady_part(hearing.curves.level.raw(), run)).value_or(-100));
        n.shape = shape_of(hearing.curves.level.raw().subspan(run.begin, run.length()), n.level_change);
        const double sung = signal::mean(steady_part(hearing.curves.voicing.raw(), run)).value_or(0);
        const double length = std::min(1.0, 0.4 + static_cast<double>(run.length()) / 40);
        n.confidence = {std::clamp(sung * length, 0.05, 0.98)};
        n.evidence = describe(n);
        notes.push_back(std::move(n));
    }
    return notes;
}

} // namespace luft::marks
