// The cue sheet as JSON, for programs.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// Schema `luftpause-cues/1`:
///
///     {"schema", "piece": {"title", "writer"},
///      "performance": {"label", "performer", "source", "permission", "duration_s"},
///      "frame_rate": "30000/1001", "drop_frame",
///      "running_time", "talk_time", "quoted", "quoted_once", "longest_quote": TIME, "quoted_share": 0..1,
///      "others": [{"label", "performer", "source", "permission", "duration_s", "quoted", "quoted_once",
///                  "longest_quote": TIME, "quoted_share": 0..1}],
///      "segments": [{"number", "kind": "talk"|"play"|"quote"|"replay", "title", "stop": null | 1.., "item":
///      null | id,
///                    "programme": {"in": TIME, "out": TIME}, "media": {"in": TIME, "out": TIME},
///                    "speed": "1/2", "performance": label, "text"}],
///      "asides": [{"item", "programme": {"in", "out"}, "media_in_s", "text"}],
///      "warnings": [{"kind", "item": null | id, "words", "remedy_s": null | number}]}
///
/// `others` are the other performances that are quoted; a segment's `performance` is whose recording it plays
/// or shows. A TIME is {"exact": fraction of seconds as text, "seconds": number, "frame": number, "timecode":
/// text}; times in the recording have no timecode. UTF-8, malformed bytes replaced.
std::string cue_json(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::exports
