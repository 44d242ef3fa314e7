// What the commands do on the script's page.
#include "base/text.h"
#include "desk/script_view.h"
#include "desk/text.h"
#include "desk/work/script_edits.h"
#include "script/order.h"
#include "script/remedy.h"

#include <algorithm>

namespace luft::desk {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

constexpr Seconds kHeardBefore{4}; ///< of the music before a halt, when it is heard

} // namespace

bool ScriptView::run(Do id, Seconds playhead) {
    form_->store(); // what follows changes or leaves what it shows
    const auto add = [&](ScriptItemKind kind) {
        selected_ = add_to_script(session_, kind, playhead);
        stale_ = true;
        bring_up_to_date();
        form_->begin_words();
    };
    switch (id) {
    case Do::draft_script:
        wishes_.say(luft::desk::draft_script(session_));
        return true;
    case Do::make_stop:
        add(ScriptItemKind::stop);
        return true;
    case Do::add_aside:
        add(ScriptItemKind::aside);
        return true;
    case Do::add_opening:
        add(ScriptItemKind::opening);
        return true;
    case Do::add_closing:
        add(ScriptItemKind::closing);
        return true;
    case Do::mend: {
        auto warnings = warnings_here();
        std::ranges::copy(on_the_whole_, std::back_inserter(warnings));
        mend_first(warnings);
        return true;
    }
    case Do::halt_earlier:
    case Do::halt_later:
        halt(id == Do::halt_later);
        return true;
    case Do::drop:
        if (selected_) remove_from_script(session_, *selected_);
        return true;
    case Do::write_remark:
        form_->begin_words();
        return true;
    case Do::play_selection:
        play_to_it();
        return true;
    default:
        return false;
    }
}

bool ScriptView::key(int code) {
    if (rows_.empty() || (code != WXK_UP && code != WXK_DOWN)) return false;
    std::vector<std::size_t> with_items;
    for (std::size_t i = 0; i < rows_.size(); ++i)
        if (rows_[i].item) with_items.push_back(i);
    const auto row = selected_row();
    const auto at = row ? std::ranges::find(with_items, *row) : with_items.end();
    if (at == with_items.end())
        select_row(with_items.front());
    else if (code == WXK_UP && at != with_items.begin())
        select_row(*(at - 1));
    else if (code == WXK_DOWN && at + 1 != with_items.end())
        select_row(*(at + 1));
    return true;
}

std::vector<std::size_t> ScriptView::warnings_here() const {
    const auto row = selected_row();
    if (!row) return {};
    auto warnings = rows_[*row].warnings;
    if (*row + 1 < rows_.size() && !rows_[*row + 1].item) // a quote too long that begins after it
        std::ranges::copy(rows_[*row + 1].warnings, std::back_inserter(warnings));
    return warnings;
}

std::optional<ScriptView::Help> ScriptView::first_help(const std::vector<std::size_t>& warnings) const {
    for (const std::size_t w : warnings)
        if (const auto remedy = script::remedy_for(source_, sheet_, sheet_.warnings[w]))
            return Help{w, remedy->words};
    return std::nullopt;
}

void ScriptView::mend_first(const std::vector<std::size_t>& warnings) {
    if (warnings.empty()) return wishes_.say("Nothing to mend here.");
    const auto help = first_help(warnings);
    if (!help)
        return wishes_.say(
            "Only you can tell what to change here: shorten the words, or leave something out.");
    wishes_.say(mend(session_, source_, sheet_, help->warning));
}

void ScriptView::halt(bool later) {
    const ScriptItem* now = selected_item();
    if (!now || now->kind != ScriptItemKind::stop) return;
    const auto moved = script::at_neighbouring_phrase_end(source_, *now, later);
    if (!moved) return wishes_.say(later ? "No phrase ends after that." : "No phrase ends before that.");
    change_in_script(session_, *moved);
    wishes_.say("Halts at " + clock_text(moved->at) + " now.");
}

void ScriptView::play_to_it() {
    const ScriptItem* now = selected_item();
    if (!now) return;
    const Seconds end = source_.performance.facts.duration;
    if (now->kind == ScriptItemKind::opening) return wishes_.play({Seconds(0), kHeardBefore});
    const Seconds at = now->kind == ScriptItemKind::closing && now->at == Seconds(0) ? end : now->at;
    wishes_.play({std::max(Seconds(0), at - kHeardBefore), at});
}

void ScriptView::move(project::ScriptItemId id, std::optional<project::ScriptItemId> before,
                      std::optional<project::ScriptItemId> after) {
    const ScriptItem* now = item(id);
    if (!now) return;
    const auto moved = script::placed_between(source_, sheet_, *now, before ? item(*before) : nullptr,
                                              after ? item(*after) : nullptr);
    if (!moved)
        return wishes_.say(now->kind == ScriptItemKind::stop
                               ? "No phrase ends there, so playback can't halt there well."
                           : now->kind == ScriptItemKind::aside ? "No rest there is long enough for it."
                                                                : "It can't go there.");
    const bool elsewhere = moved->at != now->at; // `now` is gone after the edit
    session_.edit([&](project::Project& project) { project.change_script_item(*moved); });
    if (elsewhere) wishes_.say("It stands at " + clock_text(moved->at) + " of the recording now.");
}

} // namespace luft::desk
