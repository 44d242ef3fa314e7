#include "sheet/flow.h"

#include <numeric>
#include <utility>

namespace luft::sheet {
namespace {

constexpr double kUnderHead = 4; ///< white under a head that stands again

double sum(const std::vector<double>& parts) {
    return std::accumulate(parts.begin(), parts.end(), 0.0);
}

} // namespace

void Flow::add(Block block) {
    block.kept = kept_;
    block.with_last = kept_ && !first_kept_;
    block.head = head_;
    first_kept_ = false;
    blocks_.push_back(std::move(block));
    pages_.clear();
}

void Flow::row(FlowRow row) {
    const auto set = std::make_shared<SetRow>(measuring_, std::move(row));
    add({set->parts(), [set](Canvas& canvas, double top, std::size_t first, std::size_t count) {
             set->draw(canvas, top, first, count);
         }});
}

void Flow::text(Text text, double above, double below) {
    FlowRow whole;
    whole.cells.push_back({0, paper_.room_across(), {std::move(text)}});
    whole.above = above;
    whole.below = below;
    row(std::move(whole));
}

void Flow::picture(double height, std::function<void(Canvas&)> draw) {
    add({{height}, [draw = std::move(draw)](Canvas& canvas, double top, std::size_t, std::size_t) {
             canvas.save();
             canvas.move(0, top);
             draw(canvas);
             canvas.restore();
         }});
}

void Flow::space(double height) {
    Block block{{height}, [](Canvas&, double, std::size_t, std::size_t) {}};
    block.white = true;
    add(std::move(block));
}

void Flow::keep() {
    kept_ = first_kept_ = true;
}

void Flow::head(FlowRow head_row) {
    end_head();
    row(std::move(head_row));
    head_ = blocks_.size() - 1;
}

/// Where the next part goes.
struct Flow::Place {
    Flow& flow;
    double y = 0;

    [[nodiscard]] std::vector<Run>& page() const { return flow.pages_.back(); }
    [[nodiscard]] double left() const { return flow.paper_.room_down() - y; }
    [[nodiscard]] double head_of(std::size_t block) const {
        const std::size_t head = flow.blocks_[block].head;
        return head == kNone ? 0 : sum(flow.blocks_[head].parts) + kUnderHead;
    }
    /// Room on a new page.
    [[nodiscard]] double most(std::size_t block) const { return flow.paper_.room_down() - head_of(block); }

    void put(std::size_t block, std::size_t part) {
        if (!page().empty() && page().back().block == block && part > 0)
            ++page().back().count;
        else
            page().push_back({block, part, 1, y});
        y += flow.blocks_[block].parts[part];
    }

    void new_page(std::size_t block) {
        flow.pages_.emplace_back();
        y = 0;
        const std::size_t head = flow.blocks_[block].head;
        if (head == kNone) return;
        page().push_back({head, 0, flow.blocks_[head].parts.size(), 0});
        y = head_of(block);
    }
};

double Flow::needed(std::size_t b) const {
    double height = 0;
    if (blocks_[b].kept && !blocks_[b].with_last) {
        height = sum(blocks_[b].parts);
        for (std::size_t next = b + 1; next < blocks_.size() && blocks_[next].with_last; ++next)
            height += sum(blocks_[next].parts);
    } else if (b + 1 < blocks_.size() && blocks_[b + 1].head == b) {
        const double whole = needed(b + 1), most = paper_.room_down() - sum(blocks_[b].parts) - kUnderHead;
        height = sum(blocks_[b].parts) + (whole > 0 && whole <= most ? whole : blocks_[b + 1].parts.front());
    }
    return height;
}

int Flow::pages() {
    if (!pages_.empty()) return static_cast<int>(pages_.size());
    pages_.emplace_back();
    Place place{*this};
    for (std::size_t b = 0; b < blocks_.size(); ++b) {
        const Block& block = blocks_[b];
        if (block.white && place.page().empty()) continue;
        if (!place.page().empty() && place.left() < needed(b) && needed(b) <= place.most(b))
            place.new_page(b);
        for (std::size_t part = 0; part < block.parts.size(); ++part) {
            if (block.parts[part] > place.left() && !place.page().empty()) {
                if (block.white) {
                    place.y = paper_.room_down(); // so that what follows begins a page
                    break;
                }
                place.new_page(b);
            }
            place.put(b, part);
        }
    }
    return static_cast<int>(pages_.size());
}

void Flow::draw(Canvas& canvas, int page) {
    static_cast<void>(pages());
    canvas.save();
    canvas.move(paper_.edge, paper_.edge);
    for (const Run& run : pages_.at(static_cast<std::size_t>(page)))
        blocks_[run.block].draw(canvas, run.top, run.first, run.count);
    canvas.restore();
}

} // namespace luft::sheet
