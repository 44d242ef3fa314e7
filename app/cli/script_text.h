// Script items for a person and for a program.
#pragma once

#include "cli/json_text.h"
#include "cli/quote.h"
#include "project/model.h"

#include <string>
#include <string_view>

namespace luft::cli {

std::string_view word(project::ScriptItemKind kind);

/// "  12  stop at 0:44.5, quotes B 0:12.0-0:15.5 at 50 %, replays 0:41.0-0:44.5 at 50 %, goes on at 0:40.0,
/// about moment 3, rehearsed 12.5 s, own words", with the text under it.
std::string item_text(const project::ScriptItem& item, const Labels& labels);

/// "stop 12 at 0:44.5", for messages.
std::string item_name(const project::ScriptItem& item);

/// Keys: id, kind, at_s, moment, quote (as quote_value), replay, replay_speed (of both), resume_s, text,
/// own_words, rehearsed_s.
Json item_value(const project::ScriptItem& item, const Labels& labels);

/// The settings in words, a line each.
std::string settings_text(const project::ScriptSettings& settings);
Json settings_value(const project::ScriptSettings& settings);

} // namespace luft::cli
