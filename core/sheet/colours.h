// What the sheet is drawn in: one set for light paper, one for dark.
#pragma once

#include <cstdint>

namespace luft::sheet {

/// Red, green, blue, 0 to 255, and how much it covers, 0 to 1.
struct Colour {
    std::uint8_t red = 0, green = 0, blue = 0;
    double cover = 1;

    [[nodiscard]] constexpr Colour with_cover(double c) const { return {red, green, blue, c}; }
};

/// Colours by what they stand for. Okabe & Ito 2008, "Color Universal Design"; on dark paper the darkest of
/// them are lightened so that they keep their contrast. No colour is ever the only sign.
struct Colours {
    Colour paper, card, ink, soft, faint, rule;
    Colour chest, head, change; ///< registers, and the switch between them
    Colour strength, watch, explain;
    Colour playhead, selected;
};

constexpr Colours light_colours() {
    return {.paper = {255, 253, 248},
            .card = {248, 244, 234},
            .ink = {29, 27, 24},
            .soft = {93, 88, 80},
            .faint = {141, 135, 124},
            .rule = {217, 211, 198},
            .chest = {0, 114, 178},
            .head = {230, 159, 0},
            .change = {213, 94, 0},
            .strength = {0, 130, 95},
            .watch = {178, 78, 0},
            .explain = {93, 88, 80},
            .playhead = {0, 158, 115},
            .selected = {86, 180, 233, 0.28}};
}

constexpr Colours dark_colours() {
    return {.paper = {27, 26, 23},
            .card = {37, 35, 31},
            .ink = {236, 231, 220},
            .soft = {181, 174, 159},
            .faint = {143, 137, 124},
            .rule = {69, 65, 58},
            .chest = {75, 163, 219},
            .head = {230, 159, 0},
            .change = {239, 125, 43},
            .strength = {45, 189, 148},
            .watch = {239, 125, 43},
            .explain = {181, 174, 159},
            .playhead = {45, 189, 148},
            .selected = {86, 180, 233, 0.30}};
}

} // namespace luft::sheet
