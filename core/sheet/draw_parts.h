// The parts of a row that draw.cpp puts together; for this folder's own sources only.
#pragma once

#include "sheet/draw.h"

namespace luft::sheet {

/// Colour of a mark: ink when the coach has kept it, pencil grey while it is only proposed.
Colour ink_of(const project::Mark& mark, const Look& look);
/// Its stems and lines: solid when kept, dotted while proposed.
Line line_of(const project::Mark& mark);
Colour verdict_colour(project::Verdict verdict, const Colours& colours);

void draw_staff(Canvas& canvas, const Staff& staff, const Look& look);
void draw_ribbon(Canvas& canvas, const SungLine& line, const Look& look);
/// The line over a phrase, with hooks where it begins and ends.
void draw_phrase_line(Canvas& canvas, double left, double right, double y, const project::Mark& phrase,
                      bool begins, bool ends, const Look& look);
void draw_rest(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look);
void draw_edges(Canvas& canvas, const SungLine& line, const Look& look);
void draw_figures(Canvas& canvas, const SungLine& line, const Look& look);
/// A breath's sign over its staff, or a switch's, at a place along it.
void draw_breath_sign(Canvas& canvas, const Staff& staff, double x, const project::Mark& mark,
                      const Look& look);
void draw_switch_sign(Canvas& canvas, const Staff& staff, double x, const project::Mark& mark,
                      const Look& look);
/// Words that stand on the base line `base`.
void draw_word(Canvas& canvas, const PlacedWord& word, double base, const Look& look);
void draw_breaths_and_switches(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look);
void draw_words(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look);
void draw_brackets(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look);
void draw_cards(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look);

} // namespace luft::sheet
