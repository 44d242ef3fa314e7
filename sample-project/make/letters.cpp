#include "make/letters.h"

#include <algorithm>
#include <array>

namespace luft::sample {
namespace {

// Strokes on a grid 4 wide and 6 high, y downwards; each digit pair is a point, a blank lifts the pen.
constexpr std::array<std::string_view, 26> kCapitals{
    "062046 1434",
    "0006 003041423303 3344453606",
    "4130100105163645",
    "0006 002042442606",
    "40000646 0333",
    "400006 0333",
    "41301001051636454323",
    "0006 4046 0343",
    "2026",
    "4045361605",
    "0006 400346",
    "000646",
    "0600234046",
    "06004640",
    "103041453616050110",
    "0006 003041423303",
    "103041453616050110 2446",
    "0006 003041423303 2346",
    "413010010213334445361605",
    "0040 2026",
    "000516364540",
    "002640",
    "0016233640",
    "0046 4006",
    "002340 2326",
    "00400646",
};

std::string_view strokes_of(char c) {
    if (c >= 'a' && c <= 'z') return kCapitals[static_cast<std::size_t>(c - 'a')];
    if (c >= 'A' && c <= 'Z') return kCapitals[static_cast<std::size_t>(c - 'A')];
    switch (c) {
    case ',':
        return "2517";
    case '.':
        return "2626";
    case ';':
        return "2517 2323";
    case '-':
        return "1333";
    default:
        return "";
    }
}

double advance(char c) {
    switch (c) {
    case ' ':
        return 3.2;
    case 'i':
    case 'I':
        return 3.0;
    case ',':
    case '.':
    case ';':
        return 2.6;
    case 'w':
    case 'W':
    case 'm':
    case 'M':
        return 6.2;
    default:
        return 5.6;
    }
}

/// Left edge of the glyph inside its advance, and how wide its grid is drawn.
double indent(char c) {
    return c == 'i' || c == 'I' || c == ',' || c == '.' || c == ';' ? -1.2 : 0;
}

} // namespace

double text_width(std::string_view text, double size) {
    double w = 0;
    for (const char c : text)
        w += advance(c);
    return w * size / 6;
}

Point write_text(Canvas& canvas, Point left, std::string_view text, double size, Colour colour) {
    const double unit = size / 6;
    for (const char c : text) {
        std::vector<Point> stroke;
        const std::string_view glyph = strokes_of(c);
        const double wide = c == 'w' || c == 'W' || c == 'm' || c == 'M' ? 1.15 : 1;
        for (std::size_t k = 0; k <= glyph.size();) {
            if (k >= glyph.size() || glyph[k] == ' ' || k + 1 >= glyph.size()) {
                canvas.line(stroke, 0.17 * size, colour);
                stroke.clear();
                ++k;
                continue;
            }
            stroke.push_back({left.x + ((glyph[k] - '0') * wide + indent(c)) * unit,
                              left.y - (6 - (glyph[k + 1] - '0')) * unit});
            k += 2;
        }
        left.x += advance(c) * unit;
    }
    return left;
}

} // namespace luft::sample
