#include "sheet/flow_row.h"

#include "sheet/breakable.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace luft::sheet {
namespace {

constexpr std::size_t kTogether = 2; ///< lines that stay together at a page's end and at its top
constexpr double kRule = 0.6;

std::vector<Text> in_pieces(const std::vector<Text>& texts) {
    std::vector<Text> all;
    for (const Text& text : texts) {
        double gap = text.gap;
        for (std::string& piece : pieces(text.words))
            all.push_back({.words = std::move(piece),
                           .type = text.type,
                           .colour = text.colour,
                           .gap = std::exchange(gap, 0),
                           .heading = text.heading});
    }
    return all;
}

} // namespace

SetRow::SetRow(const Canvas& measuring, FlowRow row) : row_(std::move(row)) {
    if (row_.cells.empty()) row_.cells.emplace_back();
    double tallest = -1;
    for (Cell& cell : row_.cells) {
        cell.texts = in_pieces(cell.texts);
        Lines lines;
        for (std::size_t t = 0; t < cell.texts.size(); ++t) {
            if (cell.texts[t].words.empty()) continue;
            const auto heights = measuring.line_heights(cell.width, cell.texts[t].words, cell.texts[t].type);
            for (std::size_t l = 0; l < heights.size(); ++l)
                lines.push_back({t, l, heights[l], l == 0 && !lines.empty() ? cell.texts[t].gap : 0});
        }
        const double height =
            std::accumulate(lines.begin(), lines.end(), 0.0,
                            [](double sum, const SetLine& l) { return sum + l.gap + l.height; });
        if (height > tallest) {
            tallest = height;
            main_ = cells_.size();
        }
        cells_.push_back(std::move(lines));
    }
    cut();
}

void SetRow::cut() {
    const Lines& lines = cells_[main_];
    const auto& texts = row_.cells[main_].texts;
    double beside = 0;
    for (std::size_t c = 0; c < cells_.size(); ++c) {
        double height = 0;
        for (const SetLine& l : cells_[c])
            height += l.gap + l.height;
        if (c != main_) beside = std::max(beside, height);
    }
    starts_ = {0};
    double height = 0;
    std::size_t plain = 0; // lines of the part that are no heading
    for (std::size_t i = 0; i < lines.size(); ++i) {
        height += lines[i].gap + lines[i].height;
        plain = texts[lines[i].text].heading ? 0 : plain + 1;
        const bool first = starts_.size() == 1;
        const bool full = first ? plain >= kTogether && height >= beside : plain >= 1;
        if (!full || i + 1 + kTogether > lines.size()) continue;
        parts_.push_back(height + (first ? row_.above : 0));
        starts_.push_back(i + 1);
        height = 0;
        plain = 0;
    }
    const bool whole = starts_.size() == 1;
    parts_.push_back((whole ? std::max(height, beside) + row_.above : height) + row_.below);
    starts_.push_back(lines.size());
}

void SetRow::draw_lines(Canvas& canvas, const Cell& cell, const Lines& lines, double y, std::size_t from,
                        std::size_t to) const {
    for (std::size_t i = from; i < to;) {
        const Text& text = cell.texts[lines[i].text];
        std::size_t end = i;
        double height = 0;
        for (; end < to && lines[end].text == lines[i].text; ++end)
            height += lines[end].height;
        y += lines[i].gap;
        canvas.lines(cell.left, y, cell.width, text.words, text.type, text.colour, lines[i].line, end - i);
        y += height;
        i = end;
    }
}

void SetRow::draw(Canvas& canvas, double top, std::size_t first, std::size_t count) const {
    double height = 0;
    for (std::size_t p = first; p < first + count; ++p)
        height += parts_[p];
    const bool begins = first == 0, ends = first + count == parts_.size();
    const double words = top + (begins ? row_.above : 0);
    if (row_.bar) {
        const Bar& bar = *row_.bar;
        const double end = top + height - (ends ? row_.below : 0);
        const double line = bar.twofold ? bar.width / 3 : bar.width;
        canvas.box(bar.left, words, line, end - words, bar.colour);
        if (bar.twofold) canvas.box(bar.left + bar.width - line, words, line, end - words, bar.colour);
    }
    draw_lines(canvas, row_.cells[main_], cells_[main_], words, starts_[first], starts_[first + count]);
    if (begins) {
        for (std::size_t c = 0; c < cells_.size(); ++c)
            if (c != main_) draw_lines(canvas, row_.cells[c], cells_[c], words, 0, cells_[c].size());
        if (row_.sign) row_.sign(canvas, words);
    }
    if (row_.rule && ends) {
        double right = 0;
        for (const Cell& cell : row_.cells)
            right = std::max(right, cell.left + cell.width);
        canvas.line(0, top + height - kRule, right, top + height - kRule, *row_.rule, kRule);
    }
}

} // namespace luft::sheet
