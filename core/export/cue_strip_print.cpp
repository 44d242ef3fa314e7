#include "export/cue_strip_print.h"

#include "base/text.h"
#include "export/cue_strip.h"

#include <cmath>
#include <string>

namespace luft::exports {
namespace {

constexpr double kTop = 12, kHeight = 22, kDisc = 7, kFlag = 9;
constexpr double kRuler = kTop + kHeight + 11, kKey = kRuler + 17; // base lines
constexpr sheet::Type kSmall{8.5, false, false};

sheet::Path box(double x, double y, double width, double height) {
    return sheet::Path()
        .move(x, y)
        .line(x + width, y)
        .line(x + width, y + height)
        .line(x, y + height)
        .close();
}

class Strip {
  public:
    Strip(sheet::Canvas& canvas, const sheet::Colours& colours) : canvas_(canvas), c_(colours) {}

    void stretch(script::SegmentKind kind, double x, double y, double width, double height) {
        if (kind == script::SegmentKind::play) return canvas_.fill(box(x, y, width, height), c_.chest);
        if (kind == script::SegmentKind::talk)
            return canvas_.fill_striped(box(x, y, width, height), c_.change, kWhite);
        if (kind == script::SegmentKind::quote) {
            for (double line = x + 1.5; line < x + width; line += 3)
                canvas_.line(line, y, line, y + height, c_.strength, 1.4);
            return;
        }
        for (double line = y + 1.5; line < y + height; line += 3)
            canvas_.line(x, line, x + width, line, c_.chest, 1.2);
    }

    void number(double x, int stop) {
        const double y = kTop + kHeight / 2;
        canvas_.box(x - kDisc, y - kDisc, 2 * kDisc, 2 * kDisc, kWhite, kDisc);
        canvas_.frame(x - kDisc, y - kDisc, 2 * kDisc, 2 * kDisc, c_.ink, 0.9, kDisc);
        canvas_.text(x, y + 3.2, std::to_string(stop), {stop < 100 ? 9.0 : 7.0, true, false}, c_.ink,
                     sheet::Anchor::middle);
    }

    void flag(double x, double foot) {
        const double top = foot - kFlag - 2;
        const auto cloth = sheet::Path()
                               .move(x, top)
                               .line(x + 7, top)
                               .line(x + 5, top + 2.5)
                               .line(x + 7, top + 5)
                               .line(x, top + 5)
                               .close();
        canvas_.line(x, top, x, foot, c_.ink, 0.9);
        canvas_.fill(cloth, c_.head);
        canvas_.stroke(cloth, c_.ink, 0.7);
    }

    /// One entry of the signs' meaning; the place of the next.
    double meaning(double x, script::SegmentKind kind, const std::string& words) {
        stretch(kind, x, kKey - 7, 18, 8);
        canvas_.frame(x, kKey - 7, 18, 8, c_.ink, 0.6);
        return after(x + 22, words);
    }
    double after(double x, const std::string& words) {
        canvas_.text(x, kKey, words, kSmall, c_.soft);
        return x + canvas_.extent(words, kSmall).width + 16;
    }

  private:
    static constexpr sheet::Colour kWhite{255, 255, 255};

    sheet::Canvas& canvas_;
    const sheet::Colours& c_;
};

} // namespace

void draw_cue_strip(sheet::Canvas& canvas, const script::CueSheet& sheet, double width,
                    const sheet::Colours& colours) {
    const double length = sheet.running_time.as_double();
    if (length <= 0) return;
    const auto x = [&](Rational t) { return width * t.as_double() / length; };
    Strip strip(canvas, colours);
    bool replays = false;
    for (const auto& s : sheet.segments) {
        strip.stretch(s.kind, x(s.programme_start), kTop, x(s.programme_end) - x(s.programme_start), kHeight);
        replays = replays || s.kind == script::SegmentKind::replay;
    }
    canvas.frame(0, kTop, width, kHeight, colours.ink, 0.8);
    double last = -2 * kDisc; // numbers that would lie over the one before are left out
    for (const auto& s : sheet.segments) {
        const double middle = (x(s.programme_start) + x(s.programme_end)) / 2;
        if (s.kind != script::SegmentKind::talk || s.stop_number == 0 || middle - last < 2 * kDisc + 1)
            continue;
        strip.number(middle, s.stop_number);
        last = middle;
    }
    for (const auto& a : sheet.asides)
        strip.flag(x(a.programme_start), kTop);
    const double step = ruler_step(length);
    for (double t = 0; t <= length - step / 4; t += step) {
        const double at = width * t / length;
        canvas.line(at, kTop + kHeight, at, kTop + kHeight + 3, colours.soft, 0.8);
        canvas.text(at, kRuler + 1, ruler_words(t), kSmall, colours.soft,
                    t == 0 ? sheet::Anchor::start : sheet::Anchor::middle);
    }
    double key = strip.meaning(0, script::SegmentKind::play, "recording plays");
    key = strip.meaning(key, script::SegmentKind::talk, "picture stands, you speak");
    if (replays) key = strip.meaning(key, script::SegmentKind::replay, "heard again");
    if (!sheet.others.empty()) key = strip.meaning(key, script::SegmentKind::quote, "another performance");
    if (sheet.asides.empty()) return;
    strip.flag(key, kKey + 1);
    strip.after(key + 11, "spoken over the music");
}

} // namespace luft::exports
