#include "bench/load/window_work.h"

#include "bench/load/clock.h"
#include "desk/work/edits.h"
#include "desk/work/session.h"
#include "profile/profile.h"
#include "profile/propose.h"
#include "sheet/draw.h"
#include "sheet/heights.h"
#include "sheet/word_places.h"

#include <cstdio>
#include <memory>
#include <optional>

namespace luft::load {
namespace {

constexpr double kWidth = 980, kHeight = 691; // of the sheet in a window of 1280 by 800

// The most that a piece of work may take, in milliseconds: what a coach lets pass without noticing (an edit,
// a frame), or waits for without wondering (opening, a profile). Our judgement, no source.
constexpr double kOpen = 1000, kEdit = 100, kFrame = 8, kProfile = 2000;

void tell(const char* what, Seconds cost, double limit) {
    std::printf("%s\t%.2f\t%.0f\n", what, cost.value() * 1000, limit);
    std::fflush(stdout);
}

/// The sheet as the window keeps it.
class Page {
  public:
    explicit Page(desk::Session& session) : session_(session), widths_(measuring_), heights_(measuring_) {}

    void lay_out(std::optional<double> per_second = {}) {
        view_.width = kWidth;
        view_.margin = 250;
        view_.per_second =
            per_second ? *per_second : sheet::fitting_scale(session_.source(), kWidth, view_.margin);
        layout_ = std::make_unique<sheet::Layout>(
            session_.source(), view_,
            [this](double width, std::string_view words, sheet::Type type, int most) {
                return heights_.of(width, words, type, most);
            },
            [this](std::string_view word) { return widths_.of(word); });
    }
    /// Draws the rows that a screenful shows, from a share of the sheet's height on.
    void draw(double share) const {
        const double top = share * (layout_->height() - kHeight);
        for (std::size_t row = layout_->row_under(top);
             row < layout_->places().size() && layout_->places()[row].top < top + kHeight; ++row) {
            auto canvas = sheet::Canvas::picture(static_cast<int>(kWidth),
                                                 static_cast<int>(layout_->places()[row].height), 1);
            sheet::draw_row(canvas, *layout_, row, {});
        }
    }
    /// One row in the middle: what scrolling draws at most in a frame, since rows stay drawn.
    void draw_one(double share) const {
        const auto row = static_cast<std::size_t>(share * static_cast<double>(layout_->rows().size() - 1));
        auto canvas = sheet::Canvas::picture(static_cast<int>(kWidth),
                                             static_cast<int>(layout_->places()[row].height), 1);
        sheet::draw_row(canvas, *layout_, row, {});
    }

  private:
    desk::Session& session_;
    sheet::Canvas measuring_ = sheet::Canvas::picture(1, 1);
    sheet::WordWidths widths_;
    sheet::Heights heights_;
    sheet::View view_;
    std::unique_ptr<sheet::Layout> layout_;
};

template <class Work>
void tell_median(const char* what, double limit, int times, Work work) {
    std::vector<Seconds> costs;
    for (int i = 0; i < times; ++i)
        costs.push_back(cost_of([&] { work(i); }));
    tell(what, median(costs), limit);
}

void measure_edits(desk::Session& session, Page& page) {
    const auto marks = session.source().marks;
    const auto at = [&](int i) { return marks[marks.size() / 2 + 7 * static_cast<std::size_t>(i)].id; };
    tell_median("keeping a mark", kEdit, 9, [&](int i) {
        session.edit([&](project::Project& p) { p.set_mark_state(at(i), project::MarkState::kept); });
    });
    tell_median("undoing it", kEdit, 9, [&](int) { session.undo(); });
    tell_median("setting a breath", kEdit, 5,
                [&](int i) { desk::set_breath(session, Seconds(100.0 + 10 * i)); });
    const auto moments = session.source().moments;
    tell_median("keeping a moment", kEdit, 9, [&](int i) {
        session.edit([&](project::Project& p) {
            p.set_moment_state(moments[3 * static_cast<std::size_t>(i)].id, project::MarkState::kept);
        });
    });
    tell_median("laying the sheet out again after an edit", kEdit, 3, [&](int) { page.lay_out(); });
}

/// The journal keeps every edit for good: what do ten thousand of them cost the next one, and in bytes?
void measure_after_many_edits(desk::Session& session) {
    constexpr int kEdits = 10'000;
    const auto file = session.project().file();
    const auto before = std::filesystem::file_size(file);
    const auto marks = session.source().marks;
    {
        auto project = project::Project::open(file);
        for (int i = 0; i < kEdits; ++i)
            project.set_mark_state(marks[static_cast<std::size_t>(i) % marks.size()].id,
                                   i % 2 ? project::MarkState::kept : project::MarkState::proposed);
    }
    session.reload();
    std::printf("# 10,000 edits add %.1f MB to the file\n",
                static_cast<double>(std::filesystem::file_size(file) - before) / 1e6);
    const auto mark = marks[marks.size() / 2].id;
    tell_median("keeping a mark after 10,000 edits", kEdit, 9, [&](int i) {
        session.edit([&](project::Project& p) {
            p.set_mark_state(mark, i % 2 ? project::MarkState::kept : project::MarkState::proposed);
        });
    });
    tell_median("undoing it then", kEdit, 9, [&](int) { session.undo(); });
    tell("opening after 10,000 edits", cost_of([&] { session.open(file); }), kOpen);
}

void measure_painting(Page& page) {
    for (const auto& [what, scale] : {std::pair{"a row drawn, 30 units a second", 30.0},
                                      {"a row drawn, 90 units a second", 90.0},
                                      {"a row drawn, 600 units a second", 600.0}}) {
        page.lay_out(scale);
        tell_median(what, kFrame, 41, [&](int i) { page.draw_one(i / 41.0); });
    }
}

} // namespace

void measure_window(const std::filesystem::path& file) {
    desk::Session session;
    Page page(session);
    tell("opening to the first screenful", cost_of([&] {
             session.open(file);
             page.lay_out();
             page.draw(0);
         }),
         kOpen);
    std::printf("# %zu marks, %zu moments, %zu words shown\n", session.source().marks.size(),
                session.source().moments.size(), session.source().sung_words.size());
    measure_edits(session, page);
    measure_painting(page);
    const auto performances = session.performances();
    if (performances.size() > 1)
        tell("showing another performance", cost_of([&] {
                 session.show(performances.back().id);
                 page.lay_out();
                 page.draw(0);
             }),
             kOpen);
    tell("profile", cost_of([&] { profile::make_profile(session.source()); }), kProfile);
    tell("proposing moments", cost_of([&] {
             const auto proposals = profile::propose_moments(session.source());
             session.edit([&](project::Project& p) { p.propose_moments(*session.shown(), proposals); });
         }),
         kProfile);
    measure_after_many_edits(session);
}

} // namespace luft::load
