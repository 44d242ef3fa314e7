// Pictures of counterpart phrases below each other, where two performances differ most.
#pragma once

#include "compare/comparison.h"
#include "profile/profile.h"
#include "sheet/pair_draw.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace luft::exports {

/// Width of the pictures in units of the sheet, in both reports.
inline constexpr double kPairWidth = 900;

class PairPictures {
  public:
    /// `a` and `b` are what the comparison was made from; all must outlive the pictures. `width` in units of
    /// the sheet. B is drawn in A's key.
    PairPictures(const compare::Comparison& comparison, const profile::Source& a, const profile::Source& b,
                 double width);

    /// The rows of the most telling differences, each once, in order of time.
    [[nodiscard]] std::vector<std::size_t> telling() const;
    /// The number by which a difference is called in the pictures; none when it is of the whole.
    [[nodiscard]] std::optional<int> number_of(std::size_t difference) const;
    /// "vasslow 0:05.8-0:16.3, marnik 0:05.0-0:14.5; marked: 1, 2".
    [[nodiscard]] std::string words(std::size_t row) const;

    [[nodiscard]] double width() const { return layout_.view().width; }
    [[nodiscard]] double height(std::size_t row) const { return layout_.places()[row].height; }
    /// Draws a row with its top left corner at the canvas' origin, over `paper` or on what is there.
    void draw(sheet::Canvas& canvas, std::size_t row, std::optional<sheet::Colour> paper = {}) const;

  private:
    const compare::Comparison& comparison_;
    sheet::PairLayout layout_;
};

/// How the pictures are to be read.
std::string pair_pictures_words(const compare::Comparison& comparison);

} // namespace luft::exports
