// Where the words under the line stand, so that none lies on another.
#pragma once

#include "sheet/layout.h"

#include <map>
#include <string>

namespace luft::sheet {

/// Widths of words in kSungWord, each measured once: an hour of singing has thousands, few of them different.
class WordWidths {
  public:
    /// The canvas must outlive it.
    explicit WordWidths(const Canvas& canvas) : canvas_(&canvas) {}
    double of(std::string_view word);

  private:
    const Canvas* canvas_;
    std::map<std::string, double, std::less<>> known_;
};

/// Half its height for each letter.
double estimated_width(std::string_view word);

/// The words of all rows. Each begins where its note begins, or right of the word before where that reaches
/// so far; one that would be pushed by more than one and a half times its width is set smaller. Syllables of
/// one word may touch, then without the hyphen. Words are held inside the row's right edge where there is
/// room on their left. A word that is sung on more notes than it asks for (project/sung_lines.h) has a line
/// to the end of the last one.
std::vector<PlacedWord> place_words(const Layout& layout, const Layout::WordWidth& width);

} // namespace luft::sheet
