#include "sheet/word_places.h"

#include "project/sung_lines.h"
#include "sheet/measures.h"

#include <algorithm>
#include <cmath>

namespace luft::sheet {
namespace {

constexpr double kMostPush = 1.5; ///< times its width
constexpr double kSmaller = 0.8;
constexpr double kTouching = 1, kEdge = 4, kLineGap = 3, kLeastLine = 8;
constexpr Seconds kSameStart{0.05}; ///< a word this near to a note's start is that note's own

PlacedWord placed(const SungLine& line, std::size_t row, const project::SungWord& word, double wide,
                  const PlacedWord* before) {
    PlacedWord out{.word = &word, .row = row, .width = wide, .size = kSungWord.size};
    const double natural = std::min(line.x_of(word.at), line.edge - kEdge - wide);
    out.left = natural;
    if (before)
        out.left =
            std::max(out.left, before->left + before->width + (before->word->joins ? kTouching : kWordSpace));
    if (out.left - natural > kMostPush * wide) {
        out.width *= kSmaller;
        out.size *= kSmaller;
    }
    return out;
}

void put_hyphens(PlacedWord& word, const PlacedWord* next) {
    const double from = word.left + word.width;
    if (!word.word->joins) return;
    if (!next) {
        word.hyphens.push_back(from + kHyphenRoom / 2); // the word goes on, on the next row
        return;
    }
    const double gap = next->left - from;
    if (gap < kHyphenRoom) return;
    const double count = std::max(1.0, std::floor(gap / kHyphenEvery));
    for (int i = 0; i < static_cast<int>(count); ++i)
        word.hyphens.push_back(from + gap * (i + 0.5) / count);
}

/// How many notes each word asks for by itself.
std::vector<int> asked_notes(const std::vector<project::SungWord>& words) {
    std::string text;
    for (const auto& word : words)
        text += word.text + (word.joins ? "-" : " ");
    std::vector<int> asked;
    for (const auto& line : project::sung_lines(text))
        for (const auto& syllable : line)
            asked.push_back(syllable.notes);
    asked.resize(words.size(), 1);
    return asked;
}

/// To the end of the last note that is sung on this word, when they are more than it asks for, as far as
/// there is room.
void put_line(PlacedWord& word, const SungLine& line, const PlacedWord* next, int asked) {
    if (word.word->joins) return;
    double to = 0;
    int sung = 1;
    for (const auto* note : *line.notes)
        if (note->span().start > word.word->at + kSameStart &&
            (!next || note->span().start < next->word->at - kSameStart)) {
            to = line.x_of(note->span().end);
            ++sung;
        }
    if (sung <= asked) return;
    if (next) to = std::min(to, next->left - kWordSpace);
    to = std::min(to, line.edge - kEdge);
    const double from = word.left + word.width + kLineGap;
    if (to - from < kLeastLine) return;
    word.line_from = from;
    word.line_to = to;
}

} // namespace

double WordWidths::of(std::string_view word) {
    const auto found = known_.find(word);
    if (found != known_.end()) return found->second;
    const double width = canvas_->extent(word, kSungWord).width;
    known_.emplace(word, width);
    return width;
}

double estimated_width(std::string_view word) {
    const auto follows = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80; };
    return static_cast<double>(word.size() - static_cast<std::size_t>(std::ranges::count_if(word, follows))) *
           kSungWord.size / 2;
}

WordPlacer::WordPlacer(const std::vector<project::SungWord>& words, Layout::WordWidth width)
    : words_(&words), width_(width ? std::move(width) : estimated_width), asked_(asked_notes(words)) {}

std::vector<PlacedWord> WordPlacer::place(const SungLine& line, std::size_t row) const {
    std::vector<PlacedWord> all;
    for (const auto* word : *line.words)
        all.push_back(placed(line, row, *word, width_(word->text), all.empty() ? nullptr : &all.back()));
    for (std::size_t i = 0; i < all.size(); ++i) {
        const PlacedWord* next = i + 1 < all.size() ? &all[i + 1] : nullptr;
        put_hyphens(all[i], next);
        put_line(all[i], line, next, asked_[static_cast<std::size_t>(all[i].word - words_->data())]);
    }
    return all;
}

} // namespace luft::sheet
