#include "sheet/heights.h"

namespace luft::sheet {
namespace {

constexpr std::size_t kMostKept = 100'000; // some 20 MB; only a bound

} // namespace

double Heights::of(double width, std::string_view words, Type type, int most_lines) {
    std::string key = std::to_string(width) + ' ' + std::to_string(type.size) + (type.bold ? 'b' : ' ') +
                      (type.italic ? 'i' : ' ') + std::to_string(most_lines) + ' ';
    key += words;
    if (const auto found = known_.find(key); found != known_.end()) return found->second;
    if (known_.size() >= kMostKept) known_.clear();
    const double height = canvas_->paragraph_height(width, words, type, most_lines);
    known_.emplace(std::move(key), height);
    return height;
}

} // namespace luft::sheet
