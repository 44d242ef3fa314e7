// What the window changes in a script. Each is one edit of the project; all throw Error as Session::edit.
#pragma once

#include "desk/work/session.h"
#include "script/cue_sheet.h"

#include <optional>
#include <string>

namespace luft::desk {

/// Drafts the script of the performance that is shown from its kept moments. Returns what was done, in a
/// sentence. Throws Error(bad_request) when no moment is kept.
std::string draft_script(Session& session);

/// Adds a part of that kind, without words yet; `at` says where in the recording a stop or an aside stands.
/// Returns its id.
project::ScriptItemId add_to_script(Session& session, project::ScriptItemKind kind, Seconds at);

/// Changes one part; its place in the list follows its time.
void change_in_script(Session& session, project::ScriptItem item);
/// Words of the coach's: a new draft leaves them alone. Nothing happens when they are the same.
void set_words(Session& session, project::ScriptItem item, const std::string& words);
void remove_from_script(Session& session, project::ScriptItemId id);

/// Takes what helps against one warning. Returns what was done, in a sentence. Throws Error(bad_request) when
/// nothing the program could change helps.
std::string mend(Session& session, const script::Source& source, const script::CueSheet& sheet,
                 std::size_t warning);

} // namespace luft::desk
