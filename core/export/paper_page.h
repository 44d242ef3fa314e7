// The frame that our printed pages share: title and facts at the head, cautions at the end, page numbers.
#pragma once

#include "base/progress.h"
#include "sheet/colours.h"
#include "sheet/flow.h"

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace luft::exports {

/// Sizes and colours of the printed pages.
struct Print {
    sheet::Colours colours = sheet::light_colours();
    sheet::Type title{24, true, false};
    sheet::Type section{14, true, false};
    sheet::Type heading{12, true, false};
    sheet::Type plain{11, false, false};
    sheet::Type spoken{13, false, false}; ///< to be read aloud
    sheet::Type small{9.5, false, false};
};

/// What stands at the head of the first page.
struct PaperHead {
    std::string kind;  ///< "Cue sheet"
    std::string title; ///< any length
    std::string subtitle;
    std::vector<std::string> facts;
};

/// A text as it can be set: control characters dropped, other than tab and line end.
std::string settable(const std::string& text);

/// A paragraph in one of the styles.
sheet::Text words_in(const std::string& text, sheet::Type type, sheet::Colour colour, double gap = 0);

/// Writes an A4 PDF: head, what `fill` adds, the cautions. Each page has the title and its number at its
/// foot. Throws Error(cannot_write), Stopped; then nothing stands under the name.
void write_paper(const std::filesystem::path& file, const PaperHead& head,
                 const std::function<void(sheet::Flow&, const Print&)>& fill, const Progress& progress);

} // namespace luft::exports
