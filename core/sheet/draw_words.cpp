// The words under the line.
#include "sheet/draw_parts.h"
#include "sheet/measures.h"

namespace luft::sheet {

void draw_word(Canvas& canvas, const PlacedWord& word, double base, const Look& look) {
    // Where the program has put it is a proposal.
    const Colour colour = word.word->placed ? look.colours.ink : look.colours.soft;
    canvas.text(word.left, base, word.word->text, {word.size, false, false}, colour);
    for (const double middle : word.hyphens)
        canvas.line(middle - 2, base - 4, middle + 2, base - 4, colour, 1.1);
    if (word.line_to > word.line_from) canvas.line(word.line_from, base, word.line_to, base, colour, 0.9);
}

void draw_words(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    const auto base = layout.places()[row].words;
    if (!base) return;
    for (const auto& word : layout.words_on(row))
        draw_word(canvas, word, *base, look);
}

} // namespace luft::sheet
