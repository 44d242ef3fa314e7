// What the signs mean.
#include "sheet/draw.h"
#include "sheet/glyphs.h"
#include "sheet/measures.h"

#include <functional>

namespace luft::sheet {
namespace {

struct Entry {
    const char* words;
    std::function<void(Canvas&, double x, double y, const Colours&)> draw; ///< sign around (x, y), 26 wide
};

void bar(Canvas& canvas, double x, double y, Colour colour, bool striped, Colour paper) {
    const Path path = Path().move(x - 12, y).line(x + 12, y - 4).line(x + 12, y + 4).close();
    if (striped) {
        canvas.fill_striped(path, colour, paper);
        canvas.stroke(path, colour, 0.9);
    } else {
        canvas.fill(path, colour);
    }
}

const std::vector<Entry>& entries() {
    using marks::BreathEvidence;
    using marks::OffsetKind;
    using marks::OnsetKind;
    using marks::Register;
    static const std::vector<Entry> all{
        {"chest register (thicker is louder)",
         [](Canvas& k, double x, double y, const Colours& c) { bar(k, x, y, c.chest, false, c.paper); }},
        {"head register",
         [](Canvas& k, double x, double y, const Colours& c) { bar(k, x, y, c.head, true, c.paper); }},
        {"register not told",
         [](Canvas& k, double x, double y, const Colours& c) { bar(k, x, y, c.soft, false, c.paper); }},
        {"breath, heard",
         [](Canvas& k, double x, double y, const Colours& c) {
             draw_breath(k, x, y - 2, BreathEvidence::heard, c.ink, c.paper);
         }},
        {"breath, inferred from a gap",
         [](Canvas& k, double x, double y, const Colours& c) {
             draw_breath(k, x, y - 2, BreathEvidence::inferred, c.ink, c.paper);
         }},
        {"switch up to head", [](Canvas& k, double x, double y,
                                 const Colours& c) { draw_switch(k, x, y, Register::head, c.change); }},
        {"switch down to chest", [](Canvas& k, double x, double y,
                                    const Colours& c) { draw_switch(k, x, y, Register::chest, c.change); }},
        {"moment: a strength",
         [](Canvas& k, double x, double y, const Colours& c) { draw_verdict(k, x, y, 0, c.strength); }},
        {"to watch",
         [](Canvas& k, double x, double y, const Colours& c) { draw_verdict(k, x, y, 1, c.watch); }},
        {"to explain",
         [](Canvas& k, double x, double y, const Colours& c) { draw_verdict(k, x, y, 2, c.explain); }},
        {"stop in the script",
         [](Canvas& k, double x, double y, const Colours& c) { draw_stop(k, x, y, c.ink); }},
        {"glottal onset", [](Canvas& k, double x, double y,
                             const Colours& c) { draw_onset(k, x, y, OnsetKind::glottal, c.ink); }},
        {"breathy onset", [](Canvas& k, double x, double y,
                             const Colours& c) { draw_onset(k, x + 6, y, OnsetKind::breathy, c.ink); }},
        {"balanced onset", [](Canvas& k, double x, double y,
                              const Colours& c) { draw_onset(k, x + 2, y, OnsetKind::balanced, c.ink); }},
        {"clean end", [](Canvas& k, double x, double y,
                         const Colours& c) { draw_offset(k, x, y, OffsetKind::clean, c.ink); }},
        {"breathy end", [](Canvas& k, double x, double y,
                           const Colours& c) { draw_offset(k, x - 6, y, OffsetKind::breathy, c.ink); }},
        {"trailing end", [](Canvas& k, double x, double y,
                            const Colours& c) { draw_offset(k, x - 4, y - 2, OffsetKind::trailing, c.ink); }},
        {"word placed by the coach",
         [](Canvas& k, double x, double y, const Colours& c) {
             k.text(x, y + 4, "la", kSungWord, c.ink, Anchor::middle);
         }},
        {"word spread over the notes",
         [](Canvas& k, double x, double y, const Colours& c) {
             k.text(x, y + 4, "la", kSungWord, c.soft, Anchor::middle);
         }},
        {"kept by the coach",
         [](Canvas& k, double x, double y, const Colours& c) { k.line(x - 11, y, x + 11, y, c.ink, 1.4); }},
        {"only proposed", [](Canvas& k, double x, double y,
                             const Colours& c) { k.line(x - 11, y, x + 11, y, c.faint, 1.4, Line::dotted); }},
    };
    return all;
}

constexpr double kLineHeight = 21, kSign = 32, kBetween = 18;
constexpr Type kType{12, false, false};

} // namespace

double draw_legend(Canvas& canvas, double x, double y, double width, const Colours& colours) {
    double across = 0, down = kLineHeight / 2;
    for (const auto& entry : entries()) {
        const double wide = kSign + canvas.extent(entry.words, kType).width;
        if (across > 0 && across + wide > width) {
            across = 0;
            down += kLineHeight;
        }
        entry.draw(canvas, x + across + 13, y + down, colours);
        canvas.text(x + across + kSign, y + down + 4, entry.words, kType, colours.soft);
        across += wide + kBetween;
    }
    return down + kLineHeight / 2;
}

} // namespace luft::sheet
