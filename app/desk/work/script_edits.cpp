#include "desk/work/script_edits.h"

#include "base/error.h"
#include "base/text.h"
#include "script/draft.h"
#include "script/gather.h"
#include "script/remedy.h"

#include <algorithm>

namespace luft::desk {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

project::PerformanceId shown_or_throw(const Session& session) {
    if (!session.shown())
        throw Error(Fault::bad_request, "There is no performance yet.", "Bring in a recording first.");
    return *session.shown();
}

} // namespace

std::string draft_script(Session& session) {
    const auto id = shown_or_throw(session);
    const auto source = script::gather(session.project(), session.source().performance);
    if (std::ranges::none_of(source.moments,
                             [](const auto& m) { return m.state == project::MarkState::kept; }))
        throw Error(Fault::bad_request, "No moment is kept yet, so there is nothing to talk about.",
                    "Keep some on the sheet (K), or make your own: drag over the ribbon.");
    const auto drafted = script::draft(source);
    session.edit([&](project::Project& project) { project.store_script(id, drafted); });
    const auto count = [&](auto which) {
        return static_cast<std::size_t>(std::ranges::count_if(drafted, which));
    };
    const auto own = count([](const ScriptItem& item) { return item.own_words; });
    return "Drafted: " +
           counted(count([](const ScriptItem& i) { return i.kind == ScriptItemKind::stop; }), "stop") +
           " and " +
           counted(count([](const ScriptItem& i) { return i.kind == ScriptItemKind::aside; }), "aside") +
           (own > 0 ? "; " + counted(own, "part") + " in your own words left alone." : std::string("."));
}

project::ScriptItemId add_to_script(Session& session, ScriptItemKind kind, Seconds at) {
    ScriptItem item;
    item.performance = shown_or_throw(session);
    item.kind = kind;
    if (kind == ScriptItemKind::stop || kind == ScriptItemKind::aside) item.at = at;
    return session.edit([&](project::Project& project) { return project.add_script_item(item); });
}

void change_in_script(Session& session, ScriptItem item) {
    if (item.kind == ScriptItemKind::stop || item.kind == ScriptItemKind::aside) item.position = 0;
    session.edit([&](project::Project& project) { project.change_script_item(item); });
}

void set_words(Session& session, ScriptItem item, const std::string& words) {
    if (item.text == words) return;
    item.text = words;
    item.own_words = true;
    session.edit([&](project::Project& project) { project.change_script_item(item); });
}

void remove_from_script(Session& session, project::ScriptItemId id) {
    session.edit([&](project::Project& project) { project.remove_script_item(id); });
}

std::string mend(Session& session, const script::Source& source, const script::CueSheet& sheet,
                 std::size_t warning) {
    const auto remedy = script::remedy_for(source, sheet, sheet.warnings.at(warning));
    if (!remedy)
        throw Error(Fault::bad_request, "Nothing that the program could change helps against that.",
                    "Shorten the words, or leave something out.");
    session.edit([&](project::Project& project) {
        project.change_script(source.performance.id, remedy->items, "mend the script: " + remedy->words);
    });
    return remedy->words + ".";
}

} // namespace luft::desk
