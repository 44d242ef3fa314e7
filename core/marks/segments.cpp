#include "marks/segments.h"

#include "marks/consonants.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace luft::marks {
namespace {

constexpr std::size_t kLongestHole = 3; // frames
constexpr std::size_t kShortestRun = 5;
constexpr std::size_t kShortestNote = 9;
constexpr double kTailDrop = 22; // dB

std::vector<Run> raw_runs(const Curve<Hertz>& f0) {
    std::vector<Run> runs;
    for (std::size_t i = 0; i < f0.size(); ++i) {
        const auto here = f0.at(FrameIndex{static_cast<std::int64_t>(i)});
        if (!here) continue;
        if (!runs.empty() && i - runs.back().end <= kLongestHole) {
            const auto last = f0.at(FrameIndex{static_cast<std::int64_t>(runs.back().end) - 1});
            if (last && std::abs(interval(*last, *here).value()) < 150) {
                runs.back().end = i + 1;
                continue;
            }
            if (i == runs.back().end) { // a leap without a hole: the same run, cut into notes later
                runs.back().end = i + 1;
                continue;
            }
        }
        runs.push_back({i, i + 1});
    }
    return runs;
}

/// The last frame of the run that isn't a tail. What comes after it lies far under the run's loud part and
/// never rises again.
std::size_t end_of_singing(const voice::Hearing& hearing, const Run& run) {
    std::vector<float> levels;
    for (std::size_t i = run.begin; i < run.end; ++i)
        levels.push_back(static_cast<float>(hearing.texture.level_at(i).value()));
    // Against the loud part of its last second and a half: a long run may hold soft notes after loud ones.
    std::size_t end = levels.size();
    const std::size_t from = end > 150 ? end - 150 : 0;
    const double loud = signal::quantile(std::span<const float>(levels).subspan(from), 0.85).value_or(0);
    while (end > 1 && levels[end - 1] < loud - kTailDrop)
        --end;
    return run.begin + end;
}

} // namespace

std::vector<Run> sung_runs(const voice::Hearing& hearing) {
    std::vector<Run> runs = raw_runs(hearing.curves.f0);
    if (hearing.setting == voice::Setting::alone)
        for (Run& run : runs)
            run.end = end_of_singing(hearing, run);
    std::erase_if(runs, [](const Run& r) { return r.length() < kShortestRun; });
    return runs;
}

std::vector<float> pitch_line(const voice::Hearing& hearing, const std::vector<Run>& runs) {
    const auto& f0 = hearing.curves.f0;
    std::vector<float> line(f0.size(), std::numeric_limits<float>::quiet_NaN());
    for (const Run& run : runs) {
        std::size_t last = run.begin;
        for (std::size_t i = run.begin; i < run.end; ++i) {
            const auto hz = f0.at(FrameIndex{static_cast<std::int64_t>(i)});
            if (!hz) continue;
            line[i] = static_cast<float>(pitch_of(*hz).value());
            for (std::size_t k = last + 1; k < i; ++k)
                line[k] = line[last] + (line[i] - line[last]) * static_cast<float>(k - last) /
                                           static_cast<float>(i - last);
            last = i;
        }
        // Where its tail was cut off inside a hole, the last pitch is held to the run's end.
        std::fill(line.begin() + static_cast<std::ptrdiff_t>(last) + 1,
                  line.begin() + static_cast<std::ptrdiff_t>(run.end), line[last]);
    }
    return line;
}

namespace {

/// Boundaries (frames where a new note begins) inside one run, from the pitch.
std::vector<std::size_t> pitch_boundaries(std::span<const float> pitch) {
    // Half a vibrato period at 5 to 6 Hz to either side takes the swing out and keeps steps in place.
    const auto smooth = signal::running_mean(signal::running_median(pitch, 2), 8);
    const auto [lowest, highest] = std::ranges::minmax(smooth);
    constexpr double kStep = 0.25;   // semitones between the lines that a note can lie on
    constexpr double kChange = 5.0;  // cost of a new note, in semitones x frames
    constexpr double kMostOff = 2.0; // a frame costs no more than this, so that slips don't force a note
    const auto states = static_cast<std::size_t>((highest - lowest) / kStep) + 2;
    std::vector<double> cost(states, 0.0);
    std::vector<std::uint16_t> from(states * pitch.size(), 0);
    for (std::size_t i = 0; i < pitch.size(); ++i) {
        const auto best = static_cast<std::size_t>(std::ranges::min_element(cost) - cost.begin());
        const double switched = cost[best] + kChange;
        for (std::size_t s = 0; s < states; ++s) {
            const double off = std::abs(smooth[i] - (lowest + kStep * static_cast<double>(s)));
            std::size_t origin = s;
            if (i > 0 && switched < cost[s]) {
                origin = best;
                cost[s] = switched;
            }
            from[i * states + s] = static_cast<std::uint16_t>(origin);
            cost[s] += std::min(off, kMostOff);
        }
    }
    std::vector<std::size_t> boundaries;
    auto state = static_cast<std::size_t>(std::ranges::min_element(cost) - cost.begin());
    for (std::size_t i = pitch.size(); i-- > 1;) {
        const std::size_t origin = from[i * states + state];
        if (origin != state) boundaries.push_back(i);
        state = origin;
    }
    std::ranges::reverse(boundaries);
    return boundaries;
}

/// Moves a boundary to where the unsmoothed pitch crosses half-way between the notes on its two sides.
std::size_t half_way(std::span<const float> pitch, std::size_t boundary, std::size_t before,
                     std::size_t after) {
    const auto part = [&](std::size_t a, std::size_t b) {
        return signal::median(pitch.subspan(a, b - a)).value_or(0);
    };
    const double low = part(before + (boundary - before) / 3, boundary);
    const double high = part(boundary, after - (after - boundary) / 3);
    const double half = (low + high) / 2;
    const std::size_t reach = 10;
    std::size_t best = boundary;
    double nearest = 1e9;
    for (std::size_t i = std::max(before + 1, boundary > reach ? boundary - reach : 0);
         i < std::min(after, boundary + reach); ++i) {
        if ((pitch[i - 1] - half) * (pitch[i] - half) > 0) continue;
        const double distance = std::abs(static_cast<double>(i) - static_cast<double>(boundary));
        if (distance < nearest) {
            nearest = distance;
            best = i;
        }
    }
    return best;
}

float middle_of(std::span<const float> pitch, std::size_t from, std::size_t to) {
    return static_cast<float>(signal::median(pitch.subspan(from, to - from)).value_or(0));
}

/// Whether a short stretch only passes through: less than half of it stays within half a semitone.
bool glides(std::span<const float> stretch) {
    const float middle = middle_of(stretch, 0, stretch.size());
    const auto stays = std::ranges::count_if(stretch, [&](float p) { return std::abs(p - middle) < 0.5F; });
    return 2 * static_cast<std::size_t>(stays) < stretch.size();
}

/// A wide glide may pass for a short note of its own. Its two boundaries become one, in their middle.
void join_glides(std::span<const float> pitch, std::vector<std::size_t>& cuts) {
    constexpr std::size_t kLongest = 14; // frames
    for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
        const std::size_t length = cuts[k + 1] - cuts[k];
        if (length > kLongest || !glides(pitch.subspan(cuts[k], length))) continue;
        cuts[k] += length / 2;
        cuts.erase(cuts.begin() + static_cast<std::ptrdiff_t>(k + 1));
    }
}

/// Takes out boundaries between stretches whose pitches lie nearer together than neighbouring notes do: a
/// tone that slowly drifts is one note, however far it drifts in the end.
void join_drifts(std::span<const float> pitch, std::vector<std::size_t>& cuts) {
    constexpr float kLeastStep = 0.6F; // semitones; notes are one apart, less what both may be out of tune
    for (std::size_t k = 0; k < cuts.size();) {
        const std::size_t before = k == 0 ? 0 : cuts[k - 1];
        const std::size_t after = k + 1 < cuts.size() ? cuts[k + 1] : pitch.size();
        const float step = middle_of(pitch, cuts[k], after) - middle_of(pitch, before, cuts[k]);
        if (std::abs(step) < kLeastStep)
            cuts.erase(cuts.begin() + static_cast<std::ptrdiff_t>(k));
        else
            ++k;
    }
}

/// Takes out the first boundary when what lies before it is a scoop: short, and rising all the way to the
/// note.
void join_scoop(std::span<const float> pitch, std::vector<std::size_t>& cuts) {
    constexpr std::size_t kLongest = 15;  // frames
    constexpr float kDeepest = 4;         // semitones
    constexpr float kRisingShare = 0.25F; // of the way up, from its first third to its last
    if (cuts.empty() || cuts[0] > kLongest || cuts[0] < 6) return;
    const std::size_t third = cuts[0] / 3;
    const float note = middle_of(pitch, cuts[0], cuts.size() > 1 ? cuts[1] : pitch.size());
    const float first = middle_of(pitch, 0, third), last = middle_of(pitch, cuts[0] - third, cuts[0]);
    if (first < note && note - first < kDeepest && last - first > kRisingShare * (note - first))
        cuts.erase(cuts.begin());
}

} // namespace

std::vector<Run> cut_notes(const voice::Hearing& hearing, const std::vector<Run>& runs,
                           const std::vector<float>& pitch) {
    std::vector<Run> notes;
    for (const Run& run : runs) {
        const auto line = std::span<const float>(pitch).subspan(run.begin, run.length());
        std::vector<std::size_t> cuts = pitch_boundaries(line);
        join_glides(line, cuts);
        for (std::size_t k = 0; k < cuts.size(); ++k) {
            const std::size_t before = k == 0 ? 0 : cuts[k - 1];
            const std::size_t after = k + 1 < cuts.size() ? cuts[k + 1] : line.size();
            cuts[k] = half_way(line, cuts[k], before, after);
        }
        join_drifts(line, cuts);
        join_scoop(line, cuts);
        if (hearing.setting == voice::Setting::alone)
            for (const std::size_t consonant : consonants_within(hearing, run)) {
                // Close to a change of pitch the consonant is the better mark of where the note begins.
                const auto near = std::ranges::find_if(
                    cuts, [&](std::size_t c) { return c + 12 > consonant && c < consonant + 12; });
                if (near == cuts.end())
                    cuts.push_back(consonant);
                else
                    *near = consonant;
            }
        cuts.push_back(0);
        cuts.push_back(line.size());
        std::ranges::sort(cuts);
        cuts.erase(std::ranges::unique(cuts).begin(), cuts.end());
        for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
            Run note{run.begin + cuts[k], run.begin + cuts[k + 1]};
            // A scrap belongs to the note before it (a glide's end, a slip of the pitch line).
            if (note.length() < kShortestNote && !notes.empty() && notes.back().end == note.begin)
                notes.back().end = note.end;
            else if (note.length() < kShortestNote && k + 2 < cuts.size())
                cuts[k + 1] = cuts[k];
            else if (note.length() >= kShortestRun)
                notes.push_back(note);
        }
    }
    return notes;
}

} // namespace luft::marks
