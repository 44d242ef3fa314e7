#include "script/remedy.h"

#include "base/text.h"
#include "script/lay_asides.h"
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

Remedies ideas(const Source& source, const CueSheet& sheet, const Warning& warning, const ScriptItem& item) {
    Remedies out;
    if (item.kind == ScriptItemKind::aside)
        for_aside(source, sheet, item, out);
    else if (warning.kind == WarningKind::stops_too_close)
        for_close_stop(source, item, out);
    else if (warning.remedy)
        out.push_back(moved(item, *warning.remedy, "Halt at "));
    else if (warning.kind == WarningKind::stop_outside)
        for_skipped(source, item, out);
    return out;
}

/// Whether it is gone once the remedy is taken, and nothing else is wrong with the same item.
bool helps(Source source, const Remedy& remedy, const Warning& warning) {
    for (const ScriptItem& item : remedy.items)
        *std::ranges::find(source.items, item.id, &ScriptItem::id) = item;
    return std::ranges::none_of(lay_out(source).warnings,
                                [&](const Warning& left) { return left.item == warning.item; });
}

} // namespace

std::optional<Remedy> remedy_for(const Source& source, const CueSheet& sheet, const Warning& warning) {
    if (warning.kind == WarningKind::quote_too_long) return shorten_quote(source, sheet, warning);
    if (warning.kind == WarningKind::share_too_large) return shorten_share(source, sheet);
    const ScriptItem* item = item_of(source, warning.item);
    if (!item) return std::nullopt;
    for (Remedy& remedy : ideas(source, sheet, warning, *item))
        if (helps(source, remedy, warning)) return std::move(remedy);
    return std::nullopt;
}

} // namespace luft::script
