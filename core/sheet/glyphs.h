// The signs on the sheet, as outlines around a point.
#pragma once

#include "marks/marks.h"
#include "sheet/canvas.h"

namespace luft::sheet {

/// A breath: the comma of the written breath mark, its head's middle at (x, y); filled when heard, hollow
/// when inferred.
void draw_breath(Canvas& canvas, double x, double y, marks::BreathEvidence kind, Colour ink, Colour paper);

/// A switch of register: a triangle pointing up to head or down to chest.
void draw_switch(Canvas& canvas, double x, double y, marks::Register to, Colour colour);

/// How a note starts, at the ribbon's left end: a bar for glottal, a breath of dots for breathy, an open arc
/// for balanced.
void draw_onset(Canvas& canvas, double x, double y, marks::OnsetKind kind, Colour colour);

/// How a note ends: a thin bar for clean, dots for breathy, a falling tail for trailing.
void draw_offset(Canvas& canvas, double x, double y, marks::OffsetKind kind, Colour colour);

/// A stop in the script: the two strokes of a caesura, which cut the line from above.
void draw_stop(Canvas& canvas, double x, double y, Colour colour);

/// A moment's number in its circle; the ring is dotted for a proposal.
void draw_number(Canvas& canvas, double x, double y, int number, Colour colour, Colour paper, bool kept);

/// The sign of a verdict: a plus for strength, a diamond for watch, a dot for explain.
void draw_verdict(Canvas& canvas, double x, double y, int verdict, Colour colour);

} // namespace luft::sheet
