// What a note sounds like beside its pitch: closure, ring and breaks, from the curves.
#pragma once

#include "compare/side.h"

#include <optional>

namespace luft::compare {

/// Medians over the steady part of a note (a fifth is left out at each end); none where less than half of the
/// part has a value.
struct Colour {
    std::optional<Decibels> cpp, h1h2, ring;
};
Colour colour_of(const Side& side, Span note);

/// The deepest dip of level inside a note and whether it is a break as marks/voice_breaks.h finds it.
struct Dip {
    Decibels depth{0}; ///< under the louder moments 40 to 90 ms before and after, whichever are the softer
    bool broken = false;
};
/// None without curves, and where the note is too short.
std::optional<Dip> deepest_dip(const Side& side, Span note);

/// Whether the pitch curve is within 35 cents of the note's pitch from 20 to 150 ms after its beginning: then
/// no scoop was missed. 35 cents are what a scoop begins with (marks/notes.cpp).
bool begins_on_pitch(const Side& side, const marks::Note& note);

} // namespace luft::compare
