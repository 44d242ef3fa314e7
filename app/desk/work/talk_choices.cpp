#include "desk/work/talk_choices.h"

#include "base/text.h"
#include "base/typed_time.h"
#include "script/others.h"
#include "script/place.h"
#include "script/singing.h"
#include "script/title.h"

#include <algorithm>

namespace luft::desk {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

constexpr int kPhrasesOffered = 4;
constexpr Seconds kAround{0.5}; ///< heard before and after a moment that is played again

/// Adds what is set now, unless it is offered already.
void add_present(std::vector<PlaceChoice>& choices, std::optional<Seconds> now) {
    if (!now || std::ranges::find(choices, now, &PlaceChoice::at) != choices.end()) return;
    choices.push_back({"at " + clock_text(*now), now});
}

/// The last phrase that begins before a halt; none before the first.
std::optional<std::size_t> phrase_before(const std::vector<Span>& phrases, Seconds halt) {
    std::optional<std::size_t> last;
    for (std::size_t i = 0; i < phrases.size(); ++i)
        if (phrases[i].start < halt - script::kEdge) last = i;
    return last;
}

} // namespace

const ScriptItem* talk_before(const script::Source& source, const ScriptItem& item) {
    const ScriptItem* before = nullptr;
    for (const ScriptItem& other : source.items) {
        if (other.id == item.id) continue;
        if (other.kind == ScriptItemKind::opening && (!before || before->kind == ScriptItemKind::opening))
            before = &other;
        if (other.kind != ScriptItemKind::stop || other.at > item.at) continue;
        if (other.at == item.at && other.position > item.position) continue;
        if (!before || before->kind == ScriptItemKind::opening || other.at >= before->at) before = &other;
    }
    return before;
}

std::vector<PlaceChoice> lead_ins(const script::Source& source, const ScriptItem& item) {
    const ScriptItem* before = talk_before(source, item);
    const bool stop = before && before->kind == ScriptItemKind::stop;
    std::vector<PlaceChoice> out{{stop ? "all since the stop before" : "all from the beginning", {}}};
    const auto phrases = script::phrases(source.marks);
    const Seconds from = stop ? before->at : Seconds(0);
    int offered = 0;
    for (std::size_t i = phrases.size(); i-- > 0 && offered < kPhrasesOffered;) {
        const Seconds start = script::run_up(phrases, i);
        if (phrases[i].start >= item.at - script::kEdge || start <= from) continue;
        out.push_back({(++offered == 1 ? "from its phrase, " : std::to_string(offered) + " phrases, from ") +
                           clock_text(start),
                       start});
    }
    add_present(out, before ? before->resume : std::nullopt);
    return out;
}

ScriptItem with_lead_in(const script::Source& source, const ScriptItem& item, std::optional<Seconds> at) {
    ScriptItem talk;
    if (const ScriptItem* before = talk_before(source, item)) {
        talk = *before;
    } else {
        talk.performance = source.performance.id;
        talk.kind = ScriptItemKind::opening;
    }
    talk.resume = at;
    return talk;
}

std::vector<PlaceChoice> resumes(const script::Source& source, const ScriptItem& item) {
    std::vector<PlaceChoice> out{{"where it halted", {}}};
    const auto phrases = script::phrases(source.marks);
    const auto last = phrase_before(phrases, item.at);
    if (last) {
        const Seconds start = script::run_up(phrases, *last);
        out.push_back({"from this phrase again, " + clock_text(start), start});
    }
    const std::size_t next = last ? *last + 1 : 0;
    if (next < phrases.size()) {
        const Seconds start = script::run_up(phrases, next);
        if (start > item.at) out.push_back({"with the next phrase, " + clock_text(start), start});
    }
    add_present(out, item.resume);
    return out;
}

std::vector<QuoteChoice> quotes(const script::Source& source, const ScriptItem& item) {
    std::vector<QuoteChoice> out{{"nothing", {}}};
    const auto offer = [&](const std::string& words, const project::Quote& quote) {
        const script::Other* other = script::other_of(source, quote.performance);
        if (!other || std::ranges::any_of(out, [&](const QuoteChoice& c) { return c.quote == quote; }))
            return;
        out.push_back({words + script::one_line(other->performance.label) + ", " +
                           clock_text(quote.span.start) + " to " + clock_text(quote.span.end),
                       quote});
    };
    const auto offer_phrases = [&](const project::Quote& quote) {
        const script::Other* other = script::other_of(source, quote.performance);
        if (!other) return;
        const auto phrases = script::phrases(other->marks);
        std::optional<Span> whole;
        for (std::size_t i = 0; i < phrases.size(); ++i) {
            if (phrases[i].end <= quote.span.start || phrases[i].start >= quote.span.end) continue;
            if (!whole) whole = Span{script::run_up(phrases, i), phrases[i].end};
            whole->end = phrases[i].end;
        }
        if (whole) offer("the whole phrase in ", {quote.performance, *whole});
    };
    for (const auto& moment : source.moments) {
        if (item.moment != moment.id) continue;
        if (const auto quote = script::quote_for(source, moment)) offer("the same place in ", *quote);
        if (moment.beside) offer_phrases(*moment.beside);
    }
    if (item.quote) offer("a span of ", *item.quote);
    if (out.size() == 2 && item.quote) offer_phrases(*item.quote);
    return out;
}

std::optional<project::Quote> typed_quote(const script::Source& source, const std::string& text) {
    const auto last = text.find_last_not_of(' ');
    const std::string plain = text.substr(0, last == std::string::npos ? 0 : last + 1);
    const auto gap = plain.rfind(' ');
    const auto span = typed_span(gap == std::string::npos ? plain : plain.substr(gap + 1));
    if (!span || span->end <= span->start) return std::nullopt;
    if (gap == std::string::npos && source.others.size() == 1)
        return project::Quote{source.others.front().performance.id, *span};
    for (const script::Other& other : source.others)
        if (gap != std::string::npos && other.performance.label == plain.substr(0, gap))
            return project::Quote{other.performance.id, *span};
    return std::nullopt;
}

std::string quote_to_type(const script::Source& source, const std::optional<project::Quote>& quote) {
    const script::Other* other = quote ? script::other_of(source, quote->performance) : nullptr;
    if (!other) return {};
    return other->performance.label + " " + clock_text(quote->span.start) + "-" + clock_text(quote->span.end);
}

std::vector<SpanChoice> replays(const script::Source& source, const ScriptItem& item) {
    std::vector<SpanChoice> out{{"nothing", {}}};
    const Seconds end = source.performance.facts.duration;
    const auto offer = [&](const std::string& words, Span span) {
        span = {std::max(span.start, Seconds(0)), std::min(span.end, end)};
        if (span.end > span.start)
            out.push_back({words + ", " + clock_text(span.start) + " to " + clock_text(span.end), span});
    };
    for (const auto& moment : source.moments)
        if (item.moment == moment.id)
            offer("the moment", {moment.span.start - kAround,
                                 std::min(moment.span.end + kAround, std::max(item.at, moment.span.end))});
    const auto phrases = script::phrases(source.marks);
    if (const auto last = phrase_before(phrases, item.at))
        offer("the phrase", {script::run_up(phrases, *last), std::max(phrases[*last].end, Seconds(0))});
    const bool known = std::ranges::any_of(
        out, [&](const SpanChoice& c) { return c.span && item.replay && *c.span == *item.replay; });
    if (item.replay && !known) offer("a span", *item.replay);
    return out;
}

} // namespace luft::desk
