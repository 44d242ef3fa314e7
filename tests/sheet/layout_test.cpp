#include "profile/demo_source.h"
#include "sheet/layout.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::sheet;

namespace {

/// Words as a typewriter would set them.
double typed(double width, std::string_view words, Type type, int most_lines) {
    const auto a_line = std::max(1.0, width / (type.size * 0.6));
    auto lines = std::ceil(static_cast<double>(words.size()) / a_line);
    if (most_lines > 0) lines = std::min(lines, double(most_lines));
    return lines * type.size * 1.3;
}

View view(double width, double per_second, double margin = 250) {
    View v;
    v.width = width;
    v.per_second = per_second;
    v.margin = margin;
    return v;
}

project::Moment moment(std::int64_t id, double from, double to) {
    project::Moment m;
    m.id = {id};
    m.span = {Seconds(from), Seconds(to)};
    m.shades = {{"onset", "glottal"}};
    m.remark = "She starts this line with a small click, and the next one without; listen to both.";
    return m;
}

} // namespace

TEST_CASE("A place on a row and the time sung there are each other's inverse") {
    const auto source = profile::demo::source(1);
    const Layout layout(source, view(1200, 100), typed);
    for (std::size_t row = 0; row < layout.rows().size(); ++row) {
        const Span shown = layout.rows()[row].shown;
        for (const double share : {0.05, 0.4, 0.93}) {
            const Seconds t = shown.start + shown.length() * share;
            CHECK(layout.time_at(row, layout.x_of(row, t)).value() == Approx(t.value()).margin(1e-6));
            CHECK(layout.row_of(t) == row);
        }
        CHECK(layout.pitch_at(row, layout.y_of(row, 61.5)) == Approx(61.5));
    }
}

TEST_CASE("All sung rows have one time scale, and their phrases begin at one edge") {
    const auto source = profile::demo::source(2);
    const Layout layout(source, view(1000, 80), typed);
    for (std::size_t row = 0; row < layout.rows().size(); ++row) {
        const Row& r = layout.rows()[row];
        if (r.kind != Row::Kind::sung) continue;
        CHECK(layout.x_of(row, r.sung.start) == Approx(layout.origin()));
        CHECK(layout.x_of(row, r.sung.start + Seconds(1)) == Approx(layout.origin() + 80));
        CHECK(layout.x_of(row, r.sung.end) <= layout.right_edge());
    }
}

TEST_CASE("Every note lies inside its row's staff") {
    const auto source = profile::demo::source(1);
    const Layout layout(source, view(1000, 90), typed);
    for (std::size_t row = 0; row < layout.rows().size(); ++row)
        for (const auto* n : sung_notes(layout.rows()[row].notes)) {
            const double y = layout.y_of(row, n->pitch.value() - retuned(source));
            CHECK(y > layout.places()[row].staff_top);
            CHECK(y < layout.places()[row].staff_bottom);
        }
}

TEST_CASE("Rows stand below each other, and cards beside their own row without touching") {
    auto source = profile::demo::source(1);
    source.moments.clear();
    for (int i = 0; i < 40; ++i)
        source.moments.push_back(moment(i + 1, 1 + i * 0.8, 2.5 + i * 0.8));
    const Layout layout(source, view(1100, 90, 240), typed);
    const auto& places = layout.places();
    for (std::size_t i = 1; i < places.size(); ++i)
        CHECK(places[i].top == Approx(places[i - 1].top + places[i - 1].height));
    REQUIRE(layout.cards().size() == 40);
    double bottom = 0;
    for (const auto& card : layout.cards()) {
        const double top = places[card.row].top + card.top;
        CHECK(top >= bottom);
        bottom = top + card.height;
        CHECK(bottom <= places[card.row].top + places[card.row].height);
        CHECK(card.left >= layout.right_edge());
        CHECK(card.left + card.width <= layout.view().width);
    }
}

TEST_CASE("Moments are numbered in order of time, whatever order they are stored in") {
    auto source = profile::demo::source(1);
    source.moments = {moment(1, 20, 22), moment(2, 3, 4), moment(3, 11, 12)};
    const Layout layout(source, {}, typed);
    std::vector<std::size_t> order;
    for (const auto& card : layout.cards()) {
        CHECK(card.number == static_cast<int>(order.size()) + 1);
        order.push_back(card.moment);
    }
    CHECK(order == std::vector<std::size_t>{1, 2, 0});
}

TEST_CASE("Overlapping moments get brackets in lanes of their own") {
    auto source = profile::demo::source(1);
    const double at = source.marks.front().span().start.value();
    source.moments = {moment(1, at, at + 1), moment(2, at + 0.3, at + 0.9), moment(3, at + 1.4, at + 1.9)};
    const Layout layout(source, view(1200, 100), typed);
    REQUIRE(layout.brackets().size() >= 3);
    CHECK(layout.brackets()[0].lane == 0);
    CHECK(layout.brackets()[1].lane == 1);
    CHECK(layout.brackets()[2].lane == 0);
}

TEST_CASE("A moment over two phrases has a bracket on both rows and one card") {
    auto source = profile::demo::source(1);
    const auto all = rows(source, Seconds(60));
    REQUIRE(all.size() > 2);
    const Seconds border = all[1].shown.end;
    source.moments = {moment(1, border.value() - 1, border.value() + 1)};
    const Layout layout(source, view(2000, 60), typed);
    REQUIRE(layout.brackets().size() == 2);
    CHECK(layout.brackets()[0].begins);
    CHECK_FALSE(layout.brackets()[0].ends);
    CHECK(layout.brackets()[1].ends);
    CHECK(layout.cards().size() == 1);
}

TEST_CASE("A card says shades by name, the coach's words before the program's, and the drill by title") {
    const auto vocabulary = vocabulary::default_vocabulary();
    auto m = moment(1, 0, 1);
    m.evidence = "rises in 4 ms";
    m.drill = vocabulary.drills.front().key;
    const auto words = card_words(m, vocabulary);
    CHECK(words.title.find(vocabulary.facet("onset")->name) == 0);
    CHECK(words.remark == m.remark);
    CHECK(words.drill.find(vocabulary.drills.front().title) != std::string::npos);
    m.remark.clear();
    CHECK(card_words(m, vocabulary).remark == m.evidence);
    CHECK_FALSE(card_words(m, vocabulary).own_remark);
}

TEST_CASE("At the fitting scale nine of ten phrases have room on one row") {
    const auto source = profile::demo::source(2);
    const double scale = fitting_scale(source, 1100, 250);
    CHECK(scale > 40);
    const Layout layout(source, {.width = 1100, .per_second = scale, .margin = 250}, typed);
    int cut = 0, sung = 0;
    for (const auto& row : layout.rows()) {
        cut += row.goes_on;
        sung += row.kind == Row::Kind::sung;
    }
    CHECK(cut <= sung / 10 + 1);
}

TEST_CASE("Only the moments that are wanted are shown, and each keeps its number") {
    auto source = profile::demo::source(1);
    source.moments = {moment(1, 3, 4), moment(2, 11, 12), moment(3, 20, 22)};
    source.moments[1].verdict = project::Verdict::strength;
    View only;
    only.wanted = [](const project::Moment& m) { return m.verdict == project::Verdict::strength; };
    const Layout layout(source, only, typed);
    REQUIRE(layout.cards().size() == 1);
    CHECK(layout.cards()[0].number == 2);
    for (const auto& bracket : layout.brackets())
        CHECK(bracket.moment == 1);
}
