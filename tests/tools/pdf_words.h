// The words of a PDF and where they stand, as Poppler reads them.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace luft::test {

struct PdfWord {
    int page = 1;
    double left = 0, top = 0, right = 0, bottom = 0; ///< points from the page's top left corner
    std::string text;                                ///< entities as XML writes them
};

/// Fails the test when it can't be read.
std::vector<PdfWord> pdf_words(const std::filesystem::path& file);

/// How many pairs of words of one page lie over each other, by more than a quarter of the lower one's height.
int overlaps(const std::vector<PdfWord>& words);

} // namespace luft::test
