#include "script/remedy.h"

#include "base/text.h"
#include "script/figures.h"
#include "script/lay_asides.h"
#include "script/others.h"
#include "script/shorten.h"
#include "script/singing.h"

#include <algorithm>
#include <cmath>

namespace luft::script {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

/// A halt that moves on farther than this speaks of something else. Common practice, no source.
constexpr Seconds kFarthest{12};

const ScriptItem* item_of(const Source& source, project::ScriptItemId id) {
    const auto at = std::ranges::find(source.items, id, &ScriptItem::id);
    return at == source.items.end() ? nullptr : &*at;
}

Remedy moved(ScriptItem item, Seconds to, const std::string& words) {
    item.at = to;
    item.position = 0;
    return {words + clock_text(to), {std::move(item)}};
}

using Remedies = std::vector<Remedy>; ///< the best first

/// As a stop at one of the phrase ends after it; the ear has heard the phrase out by then.
void make_a_stop(const Source& source, ScriptItem item, Remedies& out) {
    const Seconds from = item.at;
    item.kind = ScriptItemKind::stop;
    for (const Seconds end : phrase_ends(source.marks))
        if (end >= from && end <= from + kFarthest) out.push_back(moved(item, end, "Make it a stop at "));
    if (const auto nearest = nearest_of(phrase_ends(source.marks), from))
        out.push_back(moved(item, *nearest, "Make it a stop at "));
}

void for_aside(const Source& source, const CueSheet& sheet, const ScriptItem& item, Remedies& out) {
    const Seconds length(aside_length(source, Grid(sheet.frame_rate), item).as_double());
    const auto away = [&](Seconds t) { return std::abs((t - item.at).value()); };
    std::vector<Seconds> rests;
    for (const Span& rest : free_for_aside(source, sheet, item.id))
        if (const auto start = nearest_fit({rest}, item.at, length)) rests.push_back(*start);
    std::ranges::sort(rests, {}, away);
    for (const Seconds rest : rests)
        out.push_back(moved(item, rest, "Speak it in the rest at "));
    make_a_stop(source, item, out);
}

void for_close_stop(const Source& source, const ScriptItem& stop, Remedies& out) {
    for (const Seconds end : phrase_ends(source.marks))
        if (end > stop.at && end <= stop.at + kFarthest) out.push_back(moved(stop, end, "Halt later, at "));
    const ScriptItem* before = nullptr;
    for (const ScriptItem& other : source.items)
        if (other.kind == ScriptItemKind::stop && other.at < stop.at && (!before || other.at > before->at))
            before = &other;
    if (!before) return;
    ScriptItem joined = *before;
    joined.resume.reset(); // it would play on between the two
    out.push_back(moved(joined, stop.at, "Talk about both at "));
}

/// A stop in a part that an earlier talk skips: that one goes on in time for it.
void for_skipped(const Source& source, const ScriptItem& stop, Remedies& out) {
    const auto sung = phrases(source.marks);
    for (const ScriptItem& other : source.items) {
        const Seconds halt = other.kind == ScriptItemKind::opening ? Seconds(0) : other.at;
        const bool talk = other.kind == ScriptItemKind::opening || other.kind == ScriptItemKind::stop;
        if (!talk || other.id == stop.id || !other.resume || *other.resume <= stop.at || halt > stop.at)
            continue;
        ScriptItem changed = other;
        changed.resume.reset();
        for (std::size_t i = 0; i < sung.size(); ++i)
            if (const Seconds start = run_up(sung, i); start > halt && start < stop.at)
                changed.resume = start;
        out.push_back({"Play the music before it, from " + clock_text(changed.resume.value_or(halt)),
                       {std::move(changed)}});
    }
}

/// A quote outside the other performance's recording: what of it there is, or nothing.
void for_quote_outside(const Source& source, const ScriptItem& stop, Remedies& out) {
    const Other* other = other_of(source, stop.quote->performance);
    ScriptItem cut = stop;
    if (other) {
        Span& span = cut.quote->span;
        span = {std::max(span.start, Seconds(0)), std::min(span.end, other->performance.facts.duration)};
        if (span.end > span.start)
            out.push_back({"Quote " + other->performance.label + " only from " + clock_text(span.start) +
                               " to " + clock_text(span.end),
                           {cut}});
    }
    cut.quote.reset();
    out.push_back({"Leave the quote out", {std::move(cut)}});
}

Remedies ideas(const Source& source, const CueSheet& sheet, const Warning& warning, const ScriptItem& item) {
    Remedies out;
    if (item.kind == ScriptItemKind::aside)
        for_aside(source, sheet, item, out);
    else if (warning.kind == WarningKind::quote_outside)
        for_quote_outside(source, item, out);
    else if (warning.kind == WarningKind::stops_too_close)
        for_close_stop(source, item, out);
    else if (warning.remedy)
        out.push_back(moved(item, *warning.remedy, "Halt at "));
    else if (warning.kind == WarningKind::stop_outside)
        for_skipped(source, item, out);
    return out;
}

/// The source with a remedy's items in it.
Source with(Source source, const Remedy& remedy) {
    for (ScriptItem item : remedy.items) {
        if (item.id.value == 0) item.id = {-1}; // new, and none of the stored ones
        const auto old = std::ranges::find(source.items, item.id, &ScriptItem::id);
        if (old == source.items.end())
            source.items.push_back(std::move(item));
        else
            *old = std::move(item);
    }
    return source;
}

/// By how much the stretches without a word are too long, together.
double too_long(const Source& source, const CueSheet& sheet) {
    double sum = 0;
    for (const Stretch& stretch : stretches(source, sheet))
        sum += std::max(0.0, stretch.length.as_double() - source.settings.longest_quote.value());
    return sum;
}

/// What else is wrong with it: warnings on single items.
std::size_t on_items(const CueSheet& sheet) {
    return static_cast<std::size_t>(
        std::ranges::count_if(sheet.warnings, [](const Warning& w) { return w.item.value != 0; }));
}

bool is_new_halt(const Remedy& remedy) {
    return remedy.items.size() == 1 && remedy.items[0].id.value == 0 &&
           remedy.items[0].kind == ScriptItemKind::stop;
}

enum class Help { none, some, all }; ///< some: the warning goes, an older one stays on its item

/// What a remedy does for an item: its kind of warning has to go, and none of another kind may come.
Help help_for(const CueSheet& before, const CueSheet& after, const Warning& warning) {
    const auto on_it = [&](const CueSheet& sheet) {
        std::vector<WarningKind> kinds;
        for (const Warning& w : sheet.warnings)
            if (w.item == warning.item) kinds.push_back(w.kind);
        return kinds;
    };
    const auto had = on_it(before), left = on_it(after);
    const bool old = std::ranges::all_of(left, [&](WarningKind kind) {
        return kind != warning.kind && std::ranges::find(had, kind) != had.end();
    });
    if (!old || left.size() >= had.size()) return Help::none;
    return left.empty() ? Help::all : Help::some;
}

/// On an item as help_for; otherwise whether quotes are shorter, and nothing new is wrong with an item. A
/// halt that waits for its words shortens nothing yet.
Help help_of(const Source& source, const CueSheet& sheet, const Remedy& remedy, const Warning& warning) {
    const Source changed = with(source, remedy);
    const CueSheet after = lay_out(changed);
    bool shorter = false;
    if (warning.kind == WarningKind::quote_too_long)
        shorter = is_new_halt(remedy) || too_long(changed, after) < too_long(source, sheet);
    else if (warning.kind == WarningKind::share_too_large)
        shorter = share_of(after, warning.other).share < share_of(sheet, warning.other).share;
    else
        return help_for(sheet, after, warning);
    return shorter && on_items(after) <= on_items(sheet) ? Help::all : Help::none;
}

} // namespace

std::optional<Remedy> remedy_for(const Source& source, const CueSheet& sheet, const Warning& warning) {
    Remedies all;
    if (warning.kind == WarningKind::quote_too_long)
        all = shorten_quote(source, sheet, warning);
    else if (warning.kind == WarningKind::share_too_large)
        all = shorten_share(source, sheet, warning.other);
    else if (const ScriptItem* item = item_of(source, warning.item))
        all = ideas(source, sheet, warning, *item);
    std::optional<Remedy> second_best;
    for (Remedy& remedy : all) {
        const Help help = help_of(source, sheet, remedy, warning);
        if (help == Help::all) return std::move(remedy);
        if (help == Help::some && !second_best) second_best = std::move(remedy);
    }
    return second_best;
}

} // namespace luft::script
