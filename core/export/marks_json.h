// The marks of a performance as JSON, schema `luftpause-marks/1`.
#pragma once

#include "project/model.h"

#include <string>
#include <vector>

namespace luft::exports {

/// `{"schema", "performance", "performer", "marks": [{"id", "kind", "state", "origin", …}]}`; after those
/// four keys each mark has the keys of its kind in `luftpause-analysis/1`. In the order given. UTF-8. With
/// words under the line, after the marks, `"sung_words": [{"text", "joins" (a hyphen ties it to the next
/// one), "time_s", "placed" (by the coach)}]`.
std::string marks_json(const project::Performance& performance, const std::vector<project::Mark>& marks,
                       const std::vector<project::SungWord>& words);

} // namespace luft::exports
