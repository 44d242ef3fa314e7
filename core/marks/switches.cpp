#include "marks/switches.h"

#include "base/text.h"
#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {

std::vector<Switch> find_switches(const voice::Curves& c, const std::vector<Note>& notes,
                                  const std::vector<Phrase>& phrases, voice::Setting setting) {
    std::vector<Switch> found;
    const auto head_at = [&](std::size_t i) {
        return c.head_register.at(FrameIndex{static_cast<std::int64_t>(i)});
    };
    constexpr std::size_t kHolds =
        20; // frames that the new register must last; in rooms the note before sounds on for so long
    for (const Phrase& p : phrases) {
        std::optional<bool> state;
        const auto begin =
            static_cast<std::size_t>(std::max<std::int64_t>(nearest_frame(p.span.start).value, 0));
        const auto end = std::min(static_cast<std::size_t>(nearest_frame(p.span.end).value), c.frames());
        for (std::size_t i = begin; i < end; ++i) {
            const auto head = head_at(i);
            if (!head) continue;
            const bool is_head = *head > Share(0.5);
            if (!state) {
                state = is_head;
                continue;
            }
            if (is_head == *state) continue;
            std::size_t holds = 0;
            double sure = 0;
            for (std::size_t k = i; k < end && head_at(k) && (*head_at(k) > Share(0.5)) == is_head;
                 ++k, ++holds)
                sure += std::abs(head_at(k)->value() - 0.5) * 2;
            if (holds < kHolds) {
                i += holds;
                continue;
            }
            Switch s;
            s.time = time_of({static_cast<std::int64_t>(i)});
            // At the seam of two notes the switch belongs to the seam.
            for (const Note& n : notes)
                if (std::abs((n.span.start - s.time).value()) < 0.08) s.time = n.span.start;
            s.from = *state ? Register::head : Register::chest;
            s.to = is_head ? Register::head : Register::chest;
            const auto pitch_near = [&](std::size_t from, std::size_t to) -> std::optional<double> {
                const auto m = signal::median(c.f0.raw().subspan(from, to - from));
                return m ? std::optional(pitch_of(Hertz(*m)).value()) : std::nullopt;
            };
            const auto after = pitch_near(i, std::min(i + 12, end));
            const auto before = pitch_near(i > begin + 12 ? i - 12 : begin, i);
            const double jump = after && before ? *after - *before : 0;
            s.leap = std::abs(jump) > 2.5;
            const double trust = setting == voice::Setting::alone ? 1.0 : 0.27; // 1 in 5 was right
            s.confidence = {trust * (0.7 + 0.12 * sure / static_cast<double>(holds))};
            s.evidence = std::string(is_head ? "the upper partials weaken and the first one stands out"
                                             : "the upper partials come in and the first one stands back") +
                         (s.leap ? ", on a leap of " + fixed(std::abs(jump), 0) + " semitones" : "");
            found.push_back(std::move(s));
            state = is_head;
        }
    }
    return found;
}

bool too_many(const std::vector<Switch>& switches, const std::vector<Note>& notes) {
    constexpr Seconds kLeastBetween{2.5};
    Seconds sung;
    for (const Note& n : notes)
        sung += n.span.length();
    return static_cast<double>(switches.size()) * kLeastBetween > std::max(sung, 2 * kLeastBetween);
}

} // namespace luft::marks
