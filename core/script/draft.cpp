#include "script/draft.h"

#include "script/place.h"
#include "script/wording.h"

#include <algorithm>

namespace luft::script {
namespace {

using project::Moment;
using project::ScriptItem;
using project::ScriptItemKind;

std::vector<const Moment*> kept_in_order(const Source& source) {
    std::vector<const Moment*> out;
    for (const auto& m : source.moments)
        if (m.state == project::MarkState::kept) out.push_back(&m);
    std::ranges::stable_sort(out, {}, [](const Moment* m) { return m->span.end; });
    return out;
}

bool is_frame(const ScriptItem& item) {
    return item.kind == ScriptItemKind::opening || item.kind == ScriptItemKind::closing;
}

/// A stop or aside that stays as it is: in own words, or set by hand and tied to no moment.
bool stays(const ScriptItem& item) {
    return item.own_words || !item.moment;
}

/// Adds the opening or closing: stored ones in own words stay, another stored one takes the new words.
void add_frame(const Source& source, ScriptItemKind kind, Seconds at, const std::string& words,
               std::vector<ScriptItem>& out) {
    const auto before = out.size();
    const ScriptItem* reworded = nullptr;
    for (const auto& item : source.items) {
        if (item.kind != kind) continue;
        if (item.own_words)
            out.push_back(item);
        else if (!reworded)
            reworded = &item;
    }
    if (out.size() > before) return;
    ScriptItem item = reworded ? *reworded : ScriptItem{};
    item.kind = kind;
    item.performance = source.performance.id;
    if (!reworded) item.at = at;
    if (item.text != words) item.rehearsed.reset(); // it timed other words
    item.text = words;
    out.push_back(std::move(item));
}

/// The stored item that a moment's new words go into; null when it has none.
const ScriptItem* stored_for(const Source& source, const Moment& moment) {
    for (const auto& item : source.items)
        if (!is_frame(item) && !item.own_words && item.moment == moment.id) return &item;
    return nullptr;
}

bool has_own_words(const Source& source, const Moment& moment) {
    return std::ranges::any_of(source.items, [&](const ScriptItem& item) {
        return !is_frame(item) && item.own_words && item.moment == moment.id;
    });
}

ScriptItem new_item(const Source& source, const Moment& moment, std::optional<Seconds> last_stop) {
    ScriptItem item;
    item.performance = source.performance.id;
    item.moment = moment.id;
    if (const auto rest = aside_for(source, moment)) {
        item.kind = ScriptItemKind::aside;
        item.at = *rest;
        return item;
    }
    item.kind = ScriptItemKind::stop;
    item.at = stop_for(source, moment, last_stop);
    item.quote = quote_for(source, moment);
    if (const auto replay = replay_for(source, moment, item.at)) {
        item.replay = replay->span;
        item.replay_speed = replay->speed;
    }
    return item;
}

} // namespace

std::vector<ScriptItem> draft(const Source& source) {
    const auto moments = kept_in_order(source);
    Wording wording(source);

    std::vector<ScriptItem> middle;
    for (const auto& item : source.items)
        if (!is_frame(item) && stays(item)) middle.push_back(item);
    std::optional<Seconds> last_stop;
    for (const Moment* moment : moments) {
        if (has_own_words(source, *moment)) continue;
        const ScriptItem* stored = stored_for(source, *moment);
        ScriptItem item = stored ? *stored : new_item(source, *moment, last_stop);
        if (stored && stored->kind == ScriptItemKind::aside && moment->beside) { // since compared
            item = new_item(source, *moment, last_stop);
            item.id = stored->id;
        }
        const std::string words =
            item.kind == ScriptItemKind::aside ? moment->remark : wording.talk(*moment, item);
        if (item.text != words) item.rehearsed.reset();
        item.text = words;
        if (item.kind == ScriptItemKind::stop) last_stop = item.at;
        middle.push_back(std::move(item));
    }
    std::ranges::stable_sort(middle, {}, [](const ScriptItem& item) { return item.at; });

    std::vector<ScriptItem> out;
    add_frame(source, ScriptItemKind::opening, Seconds(0), wording.opening(moments, middle), out);
    std::ranges::move(middle, std::back_inserter(out));
    add_frame(source, ScriptItemKind::closing, source.performance.facts.duration, wording.closing(moments),
              out);
    for (std::size_t i = 0; i < out.size(); ++i)
        out[i].position = static_cast<int>(i) + 1;
    return out;
}

} // namespace luft::script
