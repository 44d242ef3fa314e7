#include "guide/labels.h"

#include "guide/drawn.h"
#include "script/timecode.h"
#include "script/title.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace luft::guide {
namespace {

// Sizes in units, of which the picture is 720 high; chosen by eye.
constexpr double kHigh = 720;
constexpr double kLeastUnit = 0.4; ///< of a pixel: in a smaller picture the letters stay this large
constexpr double kEdge = 28;
constexpr double kFigure = 28;
constexpr sheet::Colour kDark{20, 20, 20}, kLight{240, 240, 240};

int even(double length) {
    return std::max(2, 2 * static_cast<int>(std::ceil(length / 2)));
}

struct Words {
    std::string number; ///< "Stop 2"; empty for opening, closing and quotes
    std::string title;
};

Words words_of(const script::Segment& s) {
    const std::string whole = script::one_line(s.title, 120);
    const std::string number = "Stop " + std::to_string(s.stop_number);
    if (s.stop_number == 0 || !whole.starts_with(number)) return {"", whole};
    return {number, whole.size() > number.size() + 2 ? whole.substr(number.size() + 2) : ""};
}

} // namespace

Labels::Labels(const script::CueSheet& sheet, int width, int height)
    : rate_(sheet.frame_rate), drop_frame_(sheet.drop_frame), width_(width), height_(height),
      unit_(std::max(std::min(height / kHigh, width / kHigh), kLeastUnit)) {}

const media::MoviePicture& Labels::figure(char c) {
    const auto known = figures_.find(c);
    if (known != figures_.end()) return known->second;
    const sheet::Type type{kFigure * unit_, false, false};
    sheet::Canvas canvas = sheet::Canvas::picture(even(0.62 * type.size), even(1.3 * type.size));
    const sheet::Canvas::Pixels size = canvas.pixels();
    canvas.clear(kDark);
    canvas.text(size.width / 2.0, type.size, std::string(1, c), type, kLight, sheet::Anchor::middle);
    return figures_.emplace(c, drawn(canvas)).first->second;
}

void Labels::write_timecode(media::MoviePicture& picture, std::int64_t frame) {
    const std::string code = script::timecode(frame, rate_, drop_frame_);
    const int step = figure('0').width();
    const int edge = static_cast<int>(kEdge * unit_);
    int x = width_ - edge - step * static_cast<int>(code.size() + 2);
    for (const char c : " " + code + " ") {
        picture.lay(figure(c), x, height_ - edge - figure('0').height());
        x += step;
    }
}

void Labels::lay_slate(media::MoviePicture& picture, const script::Segment& segment) const {
    const Words words = words_of(segment);
    const sheet::Type number{36 * unit_, true, false}, title{26 * unit_, words.number.empty(), false};
    const double pad = 18 * unit_;
    const double most = width_ - 2 * kEdge * unit_ - 2 * pad;
    const sheet::Canvas measuring = sheet::Canvas::picture(1, 1);
    const double inner = std::min(most, std::max(measuring.extent(words.number, number).width,
                                                 measuring.extent(words.title, title).width + 2));
    const auto height_of = [&](const std::string& text, sheet::Type type) {
        return text.empty() ? 0 : measuring.paragraph_height(inner, text, type, 2);
    };
    const sheet::Colours colours = sheet::light_colours();
    sheet::Canvas card =
        sheet::Canvas::picture(even(inner + 2 * pad), even(height_of(words.number, number) +
                                                           height_of(words.title, title) + 1.6 * pad));
    card.clear(colours.card);
    const sheet::Canvas::Pixels size = card.pixels();
    card.frame(0.5 * unit_, 0.5 * unit_, size.width - unit_, size.height - unit_, colours.soft, unit_);
    double y = 0.8 * pad;
    if (!words.number.empty()) y += card.paragraph(pad, y, inner, words.number, number, colours.ink, 1);
    if (!words.title.empty()) card.paragraph(pad, y, inner, words.title, title, colours.soft, 2);
    const int edge = static_cast<int>(kEdge * unit_);
    picture.lay(drawn(card), edge, edge);
}

} // namespace luft::guide
