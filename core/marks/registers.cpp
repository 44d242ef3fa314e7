#include "marks/registers.h"

#include "marks/register_model.h"
#include "signal/statistics.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

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

std::vector<RegisterSample> sample_notes(const voice::Curves& c, const std::vector<Note>& notes) {
    constexpr std::size_t kPiece =
        12; // notes are cut into pieces of 120 ms, so that a switch inside one shows
    std::vector<RegisterSample> samples;
    for (const Note& n : notes) {
        const Frames f = frames_of(n, c.frames());
        for (std::size_t a = f.begin + 3; a + kPiece <= f.end; a += kPiece)
            if (const auto x = register_features(c, a, a + kPiece)) samples.push_back({*x, n.pitch, kPiece});
    }
    return samples;
}

/// Log odds of head by frame (0 where nothing is known), and what a change costs there.
struct Path {
    std::vector<double> odds, change;
};

Path evidence(const voice::Curves& c, const std::vector<Note>& notes, const RegisterModel& model,
              voice::Setting setting) {
    const bool alone = setting == voice::Setting::alone;
    const double weight = alone ? 1.0 : 0.4;   // among instruments a frame's word counts less
    const double inside = alone ? 16.0 : 80.0; // cost of a change, in log odds; tuned on the project's singer
    const double kAtNote = alone ? 6.0 : 20.0, kInPause = alone ? 2.0 : 4.0;
    Path p{std::vector<double>(c.frames(), 0.0), std::vector<double>(c.frames(), kInPause)};
    // Smoothed over 110 ms: single frames are too noisy to trust.
    const auto smooth = [](std::span<const float> curve) { return signal::running_median(curve, 5); };
    const auto h1h2 = smooth(c.h1h2.raw()), cpp = smooth(c.cpp.raw()), centroid = smooth(c.centroid.raw());
    const auto f0 = c.f0.raw();
    for (const Note& n : notes) {
        const Frames f = frames_of(n, c.frames());
        for (std::size_t i = f.begin; i < f.end; ++i) {
            p.change[i] = i < f.begin + 2 ? kAtNote : inside;
            const RegisterFeatures x{h1h2[i], std::log2(centroid[i] / f0[i]), cpp[i]};
            if (std::ranges::any_of(x, [](double v) { return std::isnan(v); })) continue;
            p.odds[i] = weight * std::clamp(model.head_score(x), -3.0, 3.0);
        }
    }
    return p;
}

/// The likeliest path: true = head, by frame.
std::vector<bool> likeliest(const Path& p) {
    std::array<double, 2> cost{};
    std::vector<std::array<bool, 2>> changed(p.odds.size());
    for (std::size_t i = 0; i < p.odds.size(); ++i) {
        const std::array<double, 2> before = cost;
        for (std::size_t s = 0; s < 2; ++s) {
            changed[i][s] = before[1 - s] + p.change[i] < before[s];
            cost[s] =
                (changed[i][s] ? before[1 - s] + p.change[i] : before[s]) + (s == 1 ? -0.5 : 0.5) * p.odds[i];
        }
    }
    std::vector<bool> head(p.odds.size());
    std::size_t state = cost[1] < cost[0] ? 1 : 0;
    for (std::size_t i = p.odds.size(); i-- > 0;) {
        head[i] = state == 1;
        if (changed[i][state]) state = 1 - state;
    }
    return head;
}

} // namespace

bool find_registers(voice::Curves& c, std::vector<Note>& notes, voice::Setting setting) {
    c.head_register = Curve<Share>(c.frames());
    const RegisterModel model = fit_registers(sample_notes(c, notes));
    if (!model.split) return false;
    const Path path = evidence(c, notes, model, setting);
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
    return true;
}

void forget_registers(voice::Curves& c, std::vector<Note>& notes) {
    c.head_register = Curve<Share>(c.frames());
    for (Note& n : notes)
        n.sung_in.reset();
}

} // namespace luft::marks
