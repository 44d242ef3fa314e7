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

/// Places the words of one performance, line by line. Each begins where its note begins, or right of the word
/// before where that reaches so far; one that would be pushed by more than one and a half times its width is
/// set smaller. Syllables of one word may touch, then without the hyphen. Words are held inside the line's
/// right edge where there is room on their left. A word that is sung on more notes than it asks for
/// (project/sung_lines.h) has a line to the end of the last one.
class WordPlacer {
  public:
    /// All words of the performance, which must outlive it and hold those of every line. Without `width` a
    /// word's width is estimated from its length.
    explicit WordPlacer(const std::vector<project::SungWord>& words, Layout::WordWidth width = {});

    [[nodiscard]] std::vector<PlacedWord> place(const SungLine& line, std::size_t row) const;

  private:
    const std::vector<project::SungWord>* words_;
    Layout::WordWidth width_;
    std::vector<int> asked_; ///< notes that each asks for by itself
};

} // namespace luft::sheet
