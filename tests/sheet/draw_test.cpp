#include "profile/demo_source.h"
#include "sheet/draw.h"
#include "sheet/pixels.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::sheet;
using test::bytes;
using test::count;

namespace {

/// A layout drawn whole, top to bottom, as a picture.
Canvas drawn(const profile::Source& source, const View& view, const Look& look = {}) {
    Canvas measuring = Canvas::picture(1, 1);
    const Layout layout(source, view, [&](double width, std::string_view words, Type type, int most) {
        return measuring.paragraph_height(width, words, type, most);
    });
    Canvas canvas = Canvas::picture(static_cast<int>(view.width), static_cast<int>(layout.height()));
    canvas.clear(look.colours.paper);
    for (std::size_t row = 0; row < layout.rows().size(); ++row) {
        canvas.save();
        canvas.move(0, layout.places()[row].top);
        draw_row(canvas, layout, row, look);
        canvas.restore();
    }
    return canvas;
}

void set_registers(profile::Source& source, std::optional<marks::Register> to) {
    for (auto& mark : source.marks)
        if (auto* n = std::get_if<marks::Note>(&mark.what)) n->sung_in = to;
    std::erase_if(source.marks, [](const auto& m) { return m.kind() == project::MarkKind::register_switch; });
}

const View kView{1000, 90, 7, 220, {}};

} // namespace

TEST_CASE("The ribbon is in the colour of its register, and in neither where none is told") {
    auto source = profile::demo::source(1);
    const auto c = light_colours();
    set_registers(source, marks::Register::chest);
    Canvas chest = drawn(source, kView);
    CHECK(count(chest, c.chest) > 1000);
    CHECK(count(chest, c.head) == 0);
    set_registers(source, marks::Register::head);
    Canvas head = drawn(source, kView);
    CHECK(count(head, c.chest) == 0);
    CHECK(count(head, c.head) > 100);
    set_registers(source, std::nullopt);
    Canvas untold = drawn(source, kView);
    CHECK(count(untold, c.chest) == 0);
    CHECK(count(untold, c.head) == 0);
}

TEST_CASE("Head register has a texture: its stripes cover far less than a solid ribbon") {
    auto source = profile::demo::source(1);
    set_registers(source, marks::Register::chest);
    Canvas solid = drawn(source, kView);
    set_registers(source, marks::Register::head);
    Canvas striped = drawn(source, kView);
    CHECK(count(striped, light_colours().head) > 100);
    CHECK(count(striped, light_colours().head) < 0.7 * count(solid, light_colours().chest));
}

TEST_CASE("What is kept looks different from what is proposed, kind by kind") {
    for (const auto kind :
         {project::MarkKind::breath, project::MarkKind::phrase, project::MarkKind::register_switch}) {
        auto source = profile::demo::source(1);
        const auto set = [&](project::MarkState state) {
            for (auto& m : source.marks)
                if (m.kind() == kind) m.state = state;
        };
        set(project::MarkState::proposed);
        Canvas before = drawn(source, kView);
        set(project::MarkState::kept);
        Canvas after = drawn(source, kView);
        CHECK(bytes(before) != bytes(after));
    }
}

TEST_CASE("A heard breath is filled and an inferred one hollow") {
    auto source = profile::demo::source(1);
    const auto set = [&](marks::BreathEvidence kind) {
        for (auto& m : source.marks)
            if (auto* b = std::get_if<marks::Breath>(&m.what)) {
                b->evidence_kind = kind;
                m.state = project::MarkState::kept;
            }
    };
    set(marks::BreathEvidence::heard);
    Canvas filled = drawn(source, kView);
    set(marks::BreathEvidence::inferred);
    Canvas hollow = drawn(source, kView);
    CHECK(count(filled, light_colours().ink) > count(hollow, light_colours().ink) + 10);
}

TEST_CASE("A stop in the script is seen on the row where it halts") {
    auto source = profile::demo::source(1);
    Canvas without = drawn(source, kView);
    source.stops = {source.marks.front().span().end};
    Canvas with = drawn(source, kView);
    CHECK(bytes(without) != bytes(with));
    source.stops = {Seconds(1e6)};
    Canvas outside = drawn(source, kView);
    CHECK(bytes(without) == bytes(outside));
}

TEST_CASE("Vibrato and intonation are written out only where there is room for figures") {
    auto source = profile::demo::source(1);
    const auto changes = [&](double scale) {
        auto plain = source;
        for (auto& m : plain.marks)
            if (auto* n = std::get_if<marks::Note>(&m.what)) n->vibrato.reset();
        View view = kView;
        view.per_second = scale;
        Canvas with = drawn(source, view), without = drawn(plain, view);
        return bytes(with) != bytes(without);
    };
    CHECK(changes(kFiguresFrom));
    CHECK_FALSE(changes(kFiguresFrom - 1));
}

TEST_CASE(
    "Words of any kind are drawn as they are: markup, broken UTF-8, right-to-left, control characters") {
    auto source = profile::demo::source(1);
    project::Moment m;
    m.id = {1};
    m.span = {Seconds(1), Seconds(3)};
    for (const std::string words : {"<b>&amp; \"x\" </b>", "\xff\xfe broken",
                                    "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D", "a\x01\x02\tb\n\nc", ""}) {
        m.remark = words;
        source.moments = {m};
        Canvas canvas = drawn(source, kView);
        CHECK(count(canvas, light_colours().ink) > 0);
    }
}

TEST_CASE("The legend takes more lines on a narrow sheet") {
    Canvas canvas = Canvas::picture(1200, 400);
    const double wide = draw_legend(canvas, 0, 0, 1100, light_colours());
    const double narrow = draw_legend(canvas, 0, 0, 400, light_colours());
    CHECK(narrow > wide * 2);
}
