#include "script/grid.h"

#include "base/error.h"
#include "base/text.h"

#include <array>
#include <cmath>

namespace luft::script {
namespace {

constexpr std::int64_t kMicro = 1'000'000;

/// Longer than any recording; keeps the fractions small. Ten days.
constexpr double kMostSeconds = 864'000;

/// The largest denominator of a rate of the trade. An average may have millions there, which the fractions of
/// a long programme don't hold.
constexpr std::int64_t kFinest = 1001;

/// Headers state durations to the millisecond at best.
constexpr Seconds kHeaderRounding{0.001};

} // namespace

Grid::Grid(Rational frame_rate) : rate_(frame_rate) {
    if (rate_ <= Rational(0) || rate_ > Rational(1000))
        throw Error(Fault::bad_request, "The programme's frame rate must lie above 0 and at most at 1000.",
                    "Set a frame rate such as 25 or 30000/1001.");
}

Rational exact(Seconds t) {
    if (!std::isfinite(t.value()) || std::abs(t.value()) > kMostSeconds)
        throw Error(Fault::bad_request, "A time in the script is not a time within a recording.",
                    "Give times in seconds from the start of the recording.");
    return nearest_rational(t.value(), kMicro);
}

std::int64_t Grid::nearest(Seconds t) const {
    return (exact(t) * rate_).round();
}

std::int64_t Grid::frames_in(Seconds duration) const {
    return duration > Seconds(0) ? (exact(duration + kHeaderRounding) * rate_).floor() : 0;
}

Rational programme_rate(const project::ScriptSettings& settings, const project::MediaFacts& facts) {
    if (settings.frame_rate_num != 0) return {settings.frame_rate_num, settings.frame_rate_den};
    if (!facts.has_video || facts.frame_rate_num <= 0 || facts.frame_rate_den <= 0) return 25;
    const Rational own(facts.frame_rate_num, facts.frame_rate_den);
    // The rates of SMPTE ST 12-1 and their doubles.
    const std::array<Rational, 9> trade = {Rational(24000, 1001), 24, 25, Rational(30000, 1001), 30, 48, 50,
                                           Rational(60000, 1001), 60};
    Rational best = trade[0];
    for (const Rational r : trade)
        if (std::abs(r.as_double() - own.as_double()) < std::abs(best.as_double() - own.as_double()))
            best = r;
    if (std::abs(best.as_double() / own.as_double() - 1) <= 0.01) return best;
    return own.den() <= kFinest ? own : nearest_rational(own.as_double(), kFinest);
}

Rational time_to_say(std::string_view text, double words_per_minute) {
    if (!(words_per_minute >= 20 && words_per_minute <= 600))
        throw Error(Fault::bad_request, "The speaking rate must lie between 20 and 600 words a minute.",
                    "150 is an ordinary pace.");
    return Rational(60 * static_cast<std::int64_t>(count_words(text))) /
           nearest_rational(words_per_minute, 1000);
}

} // namespace luft::script
