// Where the music before and after a halt may begin, and what may be played again: what the window offers.
#pragma once

#include "script/cue_sheet.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::desk {

/// One place that playback can begin at; no value = the plain way, which its words name.
struct PlaceChoice {
    std::string words;
    std::optional<Seconds> at;
};

struct SpanChoice {
    std::string words;
    std::optional<Span> span; ///< none = nothing is played again
};

/// The talk before an item, after which its music begins: a stop, or the opening; null when there is none.
const project::ScriptItem* talk_before(const script::Source& source, const project::ScriptItem& item);

/// How the music leads in: all since the talk before, or only from the start of a phrase (with its breath),
/// the nearest first. What is set now is among them.
std::vector<PlaceChoice> lead_ins(const script::Source& source, const project::ScriptItem& item);
/// The change that makes it so: the talk before goes on there. A new opening without words where there is no
/// talk before.
project::ScriptItem with_lead_in(const script::Source& source, const project::ScriptItem& item,
                                 std::optional<Seconds> at);

/// Where playback goes on after a stop: where it halted, from the start of the phrase just heard or of the
/// next one. What is set now is among them.
std::vector<PlaceChoice> resumes(const script::Source& source, const project::ScriptItem& item);

/// What a stop can play again: nothing, its moment, the phrase just heard. What is set now is among them.
std::vector<SpanChoice> replays(const script::Source& source, const project::ScriptItem& item);

struct QuoteChoice {
    std::string words;
    std::optional<project::Quote> quote; ///< none = nothing of another performance is played
};

/// What a stop can play of another performance: nothing, its moment's counterpart, the phrases that lie
/// there. What is set now is among them.
std::vector<QuoteChoice> quotes(const script::Source& source, const project::ScriptItem& item);
/// A span of another performance as it is typed: "live 0:41-0:44.5"; the label may be left out where there is
/// only one other. None for anything else.
std::optional<project::Quote> typed_quote(const script::Source& source, const std::string& text);
/// The same, as one types it; empty for none.
std::string quote_to_type(const script::Source& source, const std::optional<project::Quote>& quote);

} // namespace luft::desk
