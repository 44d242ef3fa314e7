#include "profile/correction_hint.h"

#include "base/text.h"
#include "profile/statistics.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

constexpr Seconds kLongEnough{0.2}, kHeldLongEnough{0.36};
constexpr std::size_t kLeastNotes = 20, kLeastHeld = 6, kLeastSteps = 10;

/// Cents over 55 Hz, frame by frame; NaN where nobody sings.
std::vector<double> cents_within(const Curve<Hertz>& f0, Span span) {
    std::vector<double> out;
    for (const float f : f0.within(span))
        out.push_back(f > 0 ? interval(Hertz(55), Hertz(static_cast<double>(f))).value() : std::nan(""));
    return out;
}

/// Standard deviation of a normal distribution with the same 10th and 90th percentile: a few misheard notes
/// don't count.
double spread(const std::vector<double>& values) {
    return (*percentile(values, 0.9) - *percentile(values, 0.1)) / 2.563;
}

/// Means over 90 ms: what single periods do falls out, slow unrest stays.
std::vector<double> smoothed(const std::vector<double>& values) {
    constexpr std::size_t kWide = 9;
    std::vector<double> out;
    for (std::size_t i = 0; i + kWide <= values.size(); ++i) {
        double sum = 0;
        for (std::size_t k = 0; k < kWide; ++k)
            sum += values[i + k];
        out.push_back(sum / kWide);
    }
    return out;
}

std::optional<double> stray(const Curve<Hertz>& f0, const SungNote& n) {
    // Glides into and out of the note don't count.
    const Seconds cut = std::max(n.length() * 0.2, Seconds(0.1));
    const auto slow = smoothed(cents_within(f0, {n.span().start + cut, n.span().end - cut}));
    const auto low = percentile(slow, 0.1), high = percentile(slow, 0.9);
    if (!low || !high || slow.size() < 5) return std::nullopt;
    return *high - *low;
}

/// Where the pitch between two joined notes passes `share` of the step, in frames from the stretch's
/// beginning: the last time before `until`, or the first time after it.
std::optional<double> crossing(const std::vector<double>& way, double share, std::size_t middle,
                               bool before) {
    if (before) {
        for (std::size_t i = middle; i > 0; --i)
            if (way[i - 1] <= share && way[i] > share)
                return static_cast<double>(i - 1) + (share - way[i - 1]) / (way[i] - way[i - 1]);
    } else {
        for (std::size_t i = middle; i + 1 < way.size(); ++i)
            if (way[i] < share && way[i + 1] >= share)
                return static_cast<double>(i) + (share - way[i]) / (way[i + 1] - way[i]);
    }
    return std::nullopt;
}

std::optional<double> step_frames(const Curve<Hertz>& f0, const SungNote& a, const SungNote& b) {
    const double size = 100 * (b.note->pitch - a.note->pitch).value();
    if (std::abs(size) < 80 || std::abs(size) > 1250) return std::nullopt;
    const Seconds joint = (a.span().end + b.span().start) / 2;
    const Span around{std::max(a.span().middle(), joint - Seconds(0.2)),
                      std::min(b.span().middle(), joint + Seconds(0.2))};
    auto way = cents_within(f0, around);
    const double from = 100 * (a.note->pitch.value() - pitch_of(Hertz(55)).value());
    for (double& w : way) {
        if (std::isnan(w)) return std::nullopt; // a consonant: the way can't be seen
        w = (w - from) / size;
    }
    // The middle of the step: where it passes one half for the first time.
    for (std::size_t i = 0; i + 1 < way.size(); ++i)
        if (way[i] <= 0.5 && way[i + 1] > 0.5) {
            const auto start = crossing(way, 0.1, i + 1, true), end = crossing(way, 0.9, i, false);
            if (!start || !end) return std::nullopt;
            return *end - *start;
        }
    return std::nullopt;
}

} // namespace

PitchSteadiness pitch_steadiness(const Material& m) {
    std::vector<double> centre, strays, steps;
    const auto& f0 = m.source.curves.f0;
    for (std::size_t i = 0; i < m.notes.size(); ++i) {
        const SungNote& n = m.notes[i];
        if (n.length() >= kLongEnough) centre.push_back(n.note->cents.value());
        if (n.length() >= kHeldLongEnough && !n.note->vibrato && !n.note->scoop)
            if (const auto s = stray(f0, n)) strays.push_back(*s);
        if (n.joined_after && i + 1 < m.notes.size())
            if (const auto s = step_frames(f0, n, m.notes[i + 1])) steps.push_back(*s);
    }
    PitchSteadiness p;
    p.notes = static_cast<int>(centre.size());
    p.held = static_cast<int>(strays.size());
    p.steps = static_cast<int>(steps.size());
    if (centre.size() >= kLeastNotes) p.centre_cents = spread(centre);
    if (strays.size() >= kLeastHeld) p.stray_cents = median(strays);
    if (steps.size() >= kLeastSteps) p.step_time = kHop * *median(steps);
    return p;
}

std::optional<FacetHint> correction_hint(const Material& m) {
    const PitchSteadiness p = pitch_steadiness(m);
    if (p.notes < static_cast<int>(kLeastNotes)) return std::nullopt;
    FacetHint hint;
    hint.key = "pitch-corrected";
    std::vector<std::string> signs;
    const auto speak = [&](const char* key, const char* unit, double value, int count, double border,
                           std::string words) {
        hint.evidence.push_back({key, unit, value, count, border});
        if (value < border) signs.push_back(std::move(words));
    };
    if (p.centre_cents)
        speak("centre_spread_cents", "cents", *p.centre_cents, p.notes, kPinnedCentre,
              "the notes lie within " + fixed(*p.centre_cents, 1) +
                  " cents of the tuning (standard deviation of " + std::to_string(p.notes) +
                  " notes; trained singers have 10 to 20)");
    if (p.stray_cents)
        speak("stray_cents", "cents", *p.stray_cents, p.held, kFlatStray,
              "held notes stray by no more than " + fixed(*p.stray_cents, 1) + " cents (" +
                  std::to_string(p.held) + " notes without vibrato)");
    if (p.step_time)
        speak("step_time_ms", "ms", 1000 * p.step_time->value(), p.steps,
              1000 * (m.accompanied ? kQuickStepAccompanied : kQuickStep).value(),
              "the voice steps from note to note in " + fixed(1000 * p.step_time->value(), 0) + " ms (" +
                  std::to_string(p.steps) + " joined notes; voices need 50 and more)");
    if (signs.size() < 2) return std::nullopt;
    hint.signs = static_cast<int>(signs.size());
    hint.words = std::string("The pitch ") + (hint.signs > 2 ? "may well" : "may") +
                 " have been corrected afterwards: " + listed(signs) +
                 ". This is a hint, not a finding; a very accurate singer can look like that.";
    return hint;
}

} // namespace luft::profile
