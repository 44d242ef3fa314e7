// Pictures of the phrases in which something is to be heard, with the place marked.
#pragma once

#include "profile/profile.h"
#include "sheet/draw.h"

#include <cstddef>
#include <vector>

namespace luft::exports {

/// The sheet's own rows on light paper, without moments: a reader of these knows nothing of the coach's
/// numbers.
class PhrasePictures {
  public:
    /// `width` in units of the sheet. The source must outlive the pictures.
    PhrasePictures(const profile::Source& source, double width);

    /// One phrase, and what is marked in it.
    struct Phrase {
        std::size_t row = 0;
        std::vector<Span> places;
        Span sung; ///< the phrase's own time
    };
    /// The phrases in which these places lie, each once, in order of time; places outside all sung phrases
    /// have none.
    [[nodiscard]] std::vector<Phrase> of(const std::vector<profile::Example>& places) const;

    [[nodiscard]] double width() const { return layout_.view().width; }
    [[nodiscard]] double height(const Phrase& phrase) const { return layout_.places()[phrase.row].height; }
    /// Draws a phrase with its top left corner at the canvas' origin, over `paper` or on what is there.
    void draw(sheet::Canvas& canvas, const Phrase& phrase, std::optional<sheet::Colour> paper = {}) const;

  private:
    sheet::Layout layout_;
    sheet::Look look_;
};

} // namespace luft::exports
