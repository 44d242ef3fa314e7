// A cue sheet whose texts try to break out of every format.
#pragma once

#include "script/script_material.h"

namespace luft::exports::testing {

inline const char* const kNasty =
    "She said \"no\" --> & <script>alert(1)</script>, then\nleft; שלום עולם.\r\n\r\n"
    "00:00:01.000 --> 00:00:02.000 'ok'";

/// Opening, a stop with a nasty text and a slowed replay, an aside, a stop that starts like a formula, a
/// closing.
inline script::Source cue_source() {
    using project::ScriptItemKind;
    using namespace script::testing;
    script::Source s = material();
    s.piece.title = "Harbour <Lamps> & \"Tides\"";
    s.performance.permission = "letter of 3 May";
    s.settings.frame_rate_num = 30000;
    s.settings.frame_rate_den = 1001;
    auto stop = item(2, ScriptItemKind::stop, 12, kNasty);
    stop.replay = Span{Seconds(6), Seconds(9)};
    stop.replay_speed = 0.5;
    s.items = {
        item(1, ScriptItemKind::opening, 0,
             "Welcome. We listen to one voice and one piano today. Mind the ends of the lines, and where she "
             "breathes: that is what I want to talk about."),
        stop, item(3, ScriptItemKind::aside, 26, "Listen to the harbour bell."),
        item(4, ScriptItemKind::stop, 44, "=1+1 is no formula here"),
        item(5, ScriptItemKind::closing, 60, "Thank you.")};
    return s;
}

} // namespace luft::exports::testing
