#include "sheet/heights.h"

#include "sheet/plain_lines.h"

#include <algorithm>

namespace luft::sheet {
namespace {

constexpr std::size_t kMostKept = 100'000; // some 20 MB; only a bound
constexpr int kMostLines = 50;             // whose heights are kept

} // namespace

double Heights::of(double width, std::string_view words, Type type, int most_lines) {
    std::string key = std::to_string(width) + ' ' + std::to_string(type.size) + (type.bold ? 'b' : ' ') +
                      (type.italic ? 'i' : ' ') + std::to_string(most_lines) + ' ';
    key += words;
    if (const auto found = known_.find(key); found != known_.end()) return found->second;
    if (known_.size() >= kMostKept) known_.clear();
    const auto plain = plain_height(width, words, type, most_lines);
    const double height = plain ? *plain : canvas_->paragraph_height(width, words, type, most_lines);
    known_.emplace(std::move(key), height);
    return height;
}

Heights::Face& Heights::face_of(Type type) {
    const auto found = std::ranges::find(faces_, type, &Face::type);
    if (found != faces_.end()) return *found;
    Face& face = faces_.emplace_back();
    face.type = type;
    face.space = canvas_->extent("x x", type).width - canvas_->extent("xx", type).width;
    return face;
}

double Heights::width_of(Face& face, std::string_view word) const {
    std::string key(word);
    if (const auto found = face.widths.find(key); found != face.widths.end()) return found->second;
    if (face.widths.size() >= kMostKept) face.widths.clear();
    const double width = canvas_->extent(word, face.type).width;
    face.widths.emplace(std::move(key), width);
    return width;
}

double Heights::height_of(Face& face, int lines) const {
    std::string some = "x";
    for (std::size_t i = 0; i < face.heights.size(); ++i)
        some += "\nx";
    for (; static_cast<int>(face.heights.size()) < lines; some += "\nx")
        face.heights.push_back(canvas_->extent(some, face.type).height);
    return face.heights[static_cast<std::size_t>(lines - 1)];
}

std::optional<double> Heights::plain_height(double width, std::string_view words, Type type, int most_lines) {
    if (width <= 0) return std::nullopt;
    Face& face = face_of(type);
    auto lines =
        plain_lines(words, width, face.space, [&](std::string_view word) { return width_of(face, word); });
    if (!lines) return std::nullopt;
    if (most_lines > 0) lines = std::min(*lines, most_lines);
    if (*lines > kMostLines) return std::nullopt;
    return height_of(face, *lines);
}

} // namespace luft::sheet
