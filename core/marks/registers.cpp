#include "marks/registers.h"

#include "marks/register_model.h"
#include "marks/voice_breaks.h"
#include "signal/statistics.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <span>

namespace luft::marks {
namespace {

struct Frames {
    std::size_t begin, end;
};

Frames frames_of(const Note& n, std::size_t most) {
    const auto at = [&](Seconds t) {
        return std::min(static_cast<std::size_t>(std::max<std::int64_t>(nearest_frame(t).value, 0)), most);
    };
    return {at(n.span.start), at(n.span.end)};
}

/// What is known about each frame; none where something is missing.
std::vector<std::optional<RegisterSample>> sample_frames(const voice::Hearing& hearing) {
    const voice::Curves& c = hearing.curves;
    const voice::SourceCurves& source = hearing.source;
    const auto cpp = c.cpp.raw(), ring = c.ring.raw(), f0 = c.f0.raw(), level = c.level.raw();
    std::vector<std::optional<RegisterSample>> samples(c.frames());
    for (std::size_t i = 0; i < c.frames(); ++i) {
        if (std::isnan(source.pulse[i]) || std::isnan(cpp[i]) || std::isnan(ring[i]) || std::isnan(f0[i]) ||
            std::isnan(level[i]))
            continue;
        constexpr double kLeast = 0.1, kMost = 0.8; // spreads: of the shapes' own grid, and of all of them
        samples[i] = {
            source.pulse[i],
            std::clamp<double>(source.pulse_spread[i], kLeast, kMost),
            {cpp[i], ring[i]},
            {pitch_of(Hertz(f0[i])).value(), std::log2(source.f1[i]), std::log2(source.f2[i]), level[i]}};
    }
    return samples;
}

/// Several neighbouring samples as one, the certain ones weighing more. None when there are none.
std::optional<RegisterSample> pool(const std::vector<RegisterSample>& samples) {
    if (samples.empty()) return std::nullopt;
    RegisterSample out;
    double weight = 0;
    std::array<std::vector<double>, 2> colour;
    std::array<std::vector<double>, 4> besides;
    for (const auto& s : samples) {
        const double w = 1 / (s.pulse_spread * s.pulse_spread);
        weight += w;
        out.pulse += w * s.pulse;
        for (std::size_t k = 0; k < colour.size(); ++k)
            colour[k].push_back(s.colour[k]);
        for (std::size_t k = 0; k < besides.size(); ++k)
            besides[k].push_back(s.besides[k]);
    }
    out.pulse /= weight;
    // Neighbours err together: pooling doesn't make them surer than one of them.
    out.pulse_spread = std::sqrt(static_cast<double>(samples.size()) / weight);
    for (std::size_t k = 0; k < colour.size(); ++k)
        out.colour[k] = *signal::median(colour[k]);
    for (std::size_t k = 0; k < besides.size(); ++k)
        out.besides[k] = *signal::median(besides[k]);
    return out;
}

/// The known frames of a stretch as one; none when fewer than half are known.
std::optional<RegisterSample> pool_frames(const std::vector<std::optional<RegisterSample>>& frames,
                                          std::size_t begin, std::size_t end) {
    std::vector<RegisterSample> known;
    for (std::size_t i = begin; i < end; ++i)
        if (frames[i]) known.push_back(*frames[i]);
    return 2 * known.size() < end - begin ? std::nullopt : pool(known);
}

std::vector<RegisterSample> sample_notes(const std::vector<std::optional<RegisterSample>>& frames,
                                         const std::vector<Note>& notes) {
    // Notes are cut into pieces of 100 ms, so that a switch inside one shows; their edges are left out, since
    // onsets and offsets have pulses of their own.
    constexpr std::size_t kPiece = 10, kStart = 6, kEnd = 4;
    std::vector<RegisterSample> samples;
    for (const Note& n : notes) {
        const Frames f = frames_of(n, frames.size());
        for (std::size_t a = f.begin + kStart; a + kPiece + kEnd <= f.end; a += kPiece)
            if (const auto x = pool_frames(frames, a, a + kPiece)) samples.push_back(*x);
    }
    return samples;
}

/// Log odds of head by frame (0 where nothing is known), the same as they weigh in the path, and what a
/// change costs there.
struct Path {
    std::vector<double> odds, weighed, change;
};

/// Within a note the odds may swing, but all of it has one vowel, and errs as one: together its frames don't
/// weigh more than `most`.
void limit(std::span<double> note, double most) {
    const double total = std::accumulate(note.begin(), note.end(), 0.0);
    const double over = total - std::clamp(total, -most, most);
    for (double& odds : note)
        odds -= over / static_cast<double>(note.size());
}

Path evidence(const std::vector<std::optional<RegisterSample>>& frames, const std::vector<Note>& notes,
              const RegisterModel& model, const voice::Hearing& hearing) {
    // In log odds; tuned on songs of the project's singer, dry, in rooms and among instruments.
    const bool alone = hearing.setting == voice::Setting::alone;
    constexpr double kWeight = 0.2; // neighbouring frames say the same
    constexpr double kMostOfNote = 7, kMost = 3;
    constexpr double kOfPitch = 2; // its weight, once for the whole note
    const double inside = alone ? 10 : 14;
    constexpr double kAtNote = 4, kInPause = 2, kAtBreak = 2;
    const std::vector<double> nothing(frames.size(), 0.0);
    Path p{nothing, nothing, std::vector<double>(frames.size(), kInPause)};
    constexpr std::size_t kReach = 6; // frames to either side; single ones are too noisy to trust
    for (const Note& n : notes) {
        const Frames f = frames_of(n, frames.size());
        if (f.end <= f.begin) continue;
        const std::vector<bool> breaks = find_breaks(hearing.curves, f.begin, f.end);
        for (std::size_t i = f.begin; i < f.end; ++i) {
            const bool at_edge = i < f.begin + 4 || i + 4 >= f.end;
            p.change[i] = breaks[i - f.begin] ? kAtBreak : at_edge ? kAtNote : inside;
            const std::size_t from = i > f.begin + kReach ? i - kReach : f.begin;
            if (const auto x = pool_frames(frames, from, std::min(f.end, i + kReach + 1)))
                p.odds[i] = std::clamp(model.head_score(*x), -kMost, kMost);
            p.weighed[i] = kWeight * p.odds[i];
        }
        limit(std::span(p.weighed).subspan(f.begin, f.end - f.begin), kMostOfNote);
        const double by_pitch = model.passaggio.head_odds(n.pitch.value());
        for (std::size_t i = f.begin; i < f.end; ++i) {
            p.odds[i] += by_pitch;
            p.weighed[i] += kOfPitch * by_pitch / static_cast<double>(f.end - f.begin);
        }
    }
    return p;
}

/// The likeliest path: true = head, by frame.
std::vector<bool> likeliest(const Path& p) {
    std::array<double, 2> cost{};
    std::vector<std::array<bool, 2>> changed(p.weighed.size());
    for (std::size_t i = 0; i < p.weighed.size(); ++i) {
        const std::array<double, 2> before = cost;
        for (std::size_t s = 0; s < 2; ++s) {
            changed[i][s] = before[1 - s] + p.change[i] < before[s];
            cost[s] = (changed[i][s] ? before[1 - s] + p.change[i] : before[s]) +
                      (s == 1 ? -0.5 : 0.5) * p.weighed[i];
        }
    }
    std::vector<bool> head(p.weighed.size());
    std::size_t state = cost[1] < cost[0] ? 1 : 0;
    for (std::size_t i = p.weighed.size(); i-- > 0;) {
        head[i] = state == 1;
        if (changed[i][state]) state = 1 - state;
    }
    return head;
}

/// Tuned on seeds 1024 to 1039 of the benchmark's groups with a band.
constexpr double kLeastConcordance = 0.9;

/// Of every two notes in different registers, the share in which the one in head register is the higher.
double concordance(const std::vector<Note>& notes) {
    double right = 0, pairs = 0;
    for (const Note& head : notes)
        for (const Note& chest : notes)
            if (head.sung_in == Register::head && chest.sung_in == Register::chest) {
                ++pairs;
                right += head.pitch > chest.pitch ? 1 : 0;
            }
    return pairs > 0 ? right / pairs : 0;
}

} // namespace

bool find_registers(voice::Hearing& hearing, std::vector<Note>& notes) {
    voice::Curves& c = hearing.curves;
    c.head_register = Curve<Share>(c.frames());
    const auto frames = sample_frames(hearing);
    const RegisterModel model = fit_registers(sample_notes(frames, notes));
    if (!model.split) return false;
    const Path path = evidence(frames, notes, model, hearing);
    const std::vector<bool> head = likeliest(path);
    for (Note& n : notes) {
        const Frames f = frames_of(n, c.frames());
        std::size_t head_frames = 0;
        for (std::size_t i = f.begin; i < f.end; ++i) {
            head_frames += head[i];
            // How sure: the frame's own evidence where it agrees with the path, even where it doesn't.
            const double sure = std::max(0.5, signal::logistic(head[i] ? path.odds[i] : -path.odds[i]));
            c.head_register.set(i, Share(head[i] ? std::max(sure, 0.51) : 1 - std::max(sure, 0.51)));
        }
        if (f.end > f.begin) n.sung_in = 2 * head_frames > f.end - f.begin ? Register::head : Register::chest;
    }
    // Instruments lend their colour to notes of any pitch, but few singers go to head register downwards.
    if (hearing.setting == voice::Setting::accompanied && concordance(notes) < kLeastConcordance) {
        forget_registers(c, notes);
        return false;
    }
    return true;
}

void forget_registers(voice::Curves& c, std::vector<Note>& notes) {
    c.head_register = Curve<Share>(c.frames());
    for (Note& n : notes)
        n.sung_in.reset();
}

} // namespace luft::marks
