#include "export/sung_lines.h"

#include "script/singing.h"
#include "script/title.h"

#include <algorithm>
#include <sstream>
#include <vector>

namespace luft::exports {

std::string sung_line_before(const script::Source& source, Seconds t) {
    std::vector<std::string> lines;
    std::istringstream in(source.piece.words);
    for (std::string line; std::getline(in, line);)
        if (line = script::one_line(line); !line.empty()) lines.push_back(line);
    std::vector<Seconds> starts;
    for (const auto& mark : source.marks)
        if (mark.kind() == project::MarkKind::phrase && script::counts(mark))
            starts.push_back(mark.span().start);
    if (lines.size() != starts.size()) return {};
    std::ranges::sort(starts);
    const auto sung = std::ranges::lower_bound(starts, t) - starts.begin();
    return sung > 0 ? lines[static_cast<std::size_t>(sung) - 1] : "";
}

} // namespace luft::exports
