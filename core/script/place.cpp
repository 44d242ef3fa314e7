#include "script/place.h"

#include "base/text.h"
#include "script/grid.h"
#include "script/others.h"
#include "script/singing.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace luft::script {
namespace {

// Common practice, no source, for all of these.
constexpr Seconds kPhraseReach{12};   ///< a halt later than this is too late: the ear has moved on
constexpr Seconds kAsideReach{6};     ///< the same for a word spoken over the music
constexpr Seconds kAsideMargin{0.25}; ///< left free of words on both sides of the singing
constexpr Seconds kLongestReplay{8};
constexpr Seconds kQuick{3};    ///< what is shorter passes too quickly for most ears
constexpr Seconds kLeadIn{0.5}; ///< heard before and after the moment when it is played again
constexpr Seconds kFresh{4};    ///< a halt this soon after the moment needs no replay
constexpr int kMostAsideWords = 12;

Seconds note_end(const Source& source, Seconds t) {
    const marks::Note* note = note_at(source.marks, t);
    return note ? note->span.end : t;
}

bool nobody_sings(const Source& source, Seconds t) {
    return std::ranges::none_of(singing(source.marks), [&](const Span& s) { return s.contains(t); });
}

bool passes_quickly(const project::Moment& moment) {
    static constexpr std::array<std::string_view, 5> kFacets = {"onset", "offset", "register", "intonation",
                                                                "embellishment"};
    return moment.span.length() <= kQuick && std::ranges::any_of(moment.shades, [](const auto& tag) {
               return std::ranges::find(kFacets, tag.facet) != kFacets.end();
           });
}

} // namespace

Seconds stop_for(const Source& source, const project::Moment& moment, std::optional<Seconds> last_stop) {
    const Seconds recording = source.performance.facts.duration;
    const Seconds end = moment.span.end;
    std::vector<Seconds> places = phrase_ends(source.marks);
    if (nobody_sings(source, end)) places.insert(places.begin(), end);
    std::optional<Seconds> first;
    for (const Seconds t : places) {
        if (t < end - kEdge || t > end + kPhraseReach) continue;
        if (!first) first = t;
        const bool apart = !last_stop || t - *last_stop >= source.settings.least_between_stops;
        if (apart) return std::min(t, recording);
    }
    return std::min(first ? *first : note_end(source, end), recording);
}

std::optional<Seconds> aside_for(const Source& source, const project::Moment& moment) {
    if (moment.verdict != project::Verdict::explain || !moment.drill.empty() || moment.beside)
        return std::nullopt;
    const int words = count_words(moment.remark);
    if (words == 0 || words > kMostAsideWords) return std::nullopt;
    const Seconds length(time_to_say(moment.remark, source.settings.words_per_minute).as_double());
    const Seconds from = moment.span.end;
    const Seconds to = std::min(from + kAsideReach + length, source.performance.facts.duration);
    for (const Span& rest : without({{from, to}}, singing(source.marks))) {
        // At the edges of the window nobody sings: no margin is owed there, but it does no harm.
        if (rest.length() >= length + 2 * kAsideMargin && rest.start <= from + kAsideReach)
            return rest.start + kAsideMargin;
    }
    return std::nullopt;
}

std::optional<Replay> replay_for(const Source& source, const project::Moment& moment, Seconds stop) {
    const bool late = stop - moment.span.end > kFresh;
    if (moment.span.length() > kLongestReplay) return std::nullopt;
    if (moment.verdict != project::Verdict::watch && !late && !moment.beside) return std::nullopt;
    Replay replay;
    replay.span = {std::max(moment.span.start - kLeadIn, Seconds(0)),
                   std::min(moment.span.end + kLeadIn, std::max(stop, moment.span.end))};
    replay.span.end = std::min(replay.span.end, source.performance.facts.duration);
    if (replay.span.end <= replay.span.start) return std::nullopt;
    if (passes_quickly(moment)) replay.speed = 0.5;
    return replay;
}

std::optional<project::Quote> quote_for(const Source& source, const project::Moment& moment) {
    if (!moment.beside) return std::nullopt;
    const Other* other = other_of(source, moment.beside->performance);
    if (!other) return std::nullopt;
    project::Quote quote = *moment.beside;
    quote.span.start = std::min(quote.span.start, std::max(quote.span.start - kLeadIn, Seconds(0)));
    // A counterpart that runs past the recording's end stays as it is, and is warned about.
    quote.span.end =
        std::max(quote.span.end, std::min(quote.span.end + kLeadIn, other->performance.facts.duration));
    return quote;
}

} // namespace luft::script
