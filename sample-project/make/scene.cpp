#include "make/scene.h"

#include "make/letters.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace luft::sample {
namespace {

using singer::TrueNote;
using singer::Vowel;

double opening_of(Vowel v) {
    switch (v) {
    case Vowel::a:
        return 1.0;
    case Vowel::o:
        return 0.75;
    case Vowel::e:
        return 0.6;
    case Vowel::u:
        return 0.45;
    case Vowel::i:
        return 0.35;
    }
    return 0.5;
}

double rounding_of(Vowel v) {
    return v == Vowel::u ? 1.0 : v == Vowel::o ? 0.75 : v == Vowel::a ? 0.3 : 0;
}

double ease(double x) {
    x = std::clamp(x, 0.0, 1.0);
    return x * x * (3 - 2 * x);
}

} // namespace

Scene::Scene(const Performance& performance, const singer::Truth& truth)
    : looks_(performance.looks), truth_(truth), land_(kWidth, kHeight) {
    draw_land();
}

void Scene::draw_land() {
    land_.sky(looks_.sky_high, looks_.sky_low, 150);
    const Colour water = between(looks_.sky_high, looks_.sky_low, 0.25);
    const Colour hill = between(looks_.sky_high, {0.05, 0.08, 0.10}, 0.55);
    land_.ellipse({360, 62}, 34, 34, {0.97, 0.93, 0.82}); // the moon
    land_.ellipse({90, 176}, 330, 90, hill);
    land_.ellipse({470, 172}, 240, 46, hill);
    land_.shape(std::array<Point, 4>{{{-2, 160}, {482, 160}, {482, 272}, {-2, 272}}}, water);
    for (int k = 0; k < 5; ++k) { // its light on the water
        const double y = 170 + 9 * k, half = 10 + 5 * k;
        land_.line(std::array<Point, 2>{{{360 - half, y}, {360 + half, y}}}, 1.6,
                   between(water, {0.97, 0.93, 0.82}, 0.45 - 0.06 * k));
    }
    for (const auto& [x, y] :
         {std::pair{40.0, 148.0}, {72.0, 140.0}, {104.0, 145.0}, {437.0, 154.0}}) { // windows
        land_.shape(std::array<Point, 4>{{{x, y}, {x + 4, y}, {x + 4, y + 5}, {x, y + 5}}},
                    {0.98, 0.83, 0.48});
    }
    const Colour hull{0.20, 0.15, 0.14}; // a boat
    land_.shape(std::array<Point, 4>{{{392, 183}, {444, 183}, {434, 195}, {402, 195}}}, hull);
    land_.line(std::array<Point, 2>{{{417, 183}, {417, 148}}}, 2, hull);
    land_.shape(std::array<Point, 3>{{{420, 150}, {438, 178}, {420, 178}}}, {0.86, 0.80, 0.70});
}

Scene::Pose Scene::pose_at(Seconds t) const {
    Pose pose;
    constexpr Seconds kLook{0.05}; // both sides, so that the mouth moves smoothly
    double open = 0, round = 0;
    int seen = 0;
    for (const Seconds s : {t - kLook, t - kLook / 2, t, t + kLook / 2, t + kLook}) {
        ++seen;
        const auto level = truth_.level.at(s);
        if (!level) continue;
        for (const TrueNote& n : truth_.notes) {
            if (!n.span.contains(s)) continue;
            const double loud = std::clamp((level->value() + 42) / 26, 0.0, 1.15);
            open += opening_of(n.vowel) * (0.25 + 0.75 * loud);
            round += rounding_of(n.vowel);
        }
    }
    pose.mouth = open / seen, pose.round = round / seen;
    for (const singer::TrueBreath& b : truth_.breaths) {
        const double in = ease((t - b.span.start) / b.span.length());
        if (t < b.span.start) continue;
        const double out = ease((t - b.span.end).value() / 3.5); // spent over the phrase
        pose.breath = std::max(pose.breath, in * (1 - out));
        if (b.span.contains(t))
            pose.mouth = std::max(pose.mouth, 0.30 * std::sin(M_PI * ((t - b.span.start) / b.span.length())));
    }
    pose.sway = std::sin(2 * M_PI * t.value() / 5.7);
    return pose;
}

void Scene::draw_singer(Canvas& c, const Pose& pose) const {
    const double x = 205 + 3 * pose.sway, lift = 7 * pose.breath;
    const double head_y = 96 - 1.5 * pose.breath, neck = 142 - 0.5 * lift, shoulder = 176 - lift;
    const double broad = looks_.long_hair ? 46 : 54;
    const Colour shade = between(looks_.skin, {0.35, 0.18, 0.15}, 0.25);
    if (looks_.long_hair) {
        c.ellipse({x, head_y + 2}, 86, 100, looks_.hair);
        c.shape(
            std::array<Point, 4>{
                {{x - 42, head_y}, {x + 42, head_y}, {x + 46, neck + 24}, {x - 46, neck + 24}}},
            looks_.hair);
    }
    // Neck, then coat: shoulders are one thick stroke, which rises with the breath and widens a little.
    c.line(std::array<Point, 2>{{{x, head_y + 30}, {x, neck + 22}}}, 25, shade);
    const double wide = broad + 3 * pose.breath;
    c.line(std::array<Point, 5>{{{x - wide, shoulder + 14},
                                 {x - 0.45 * wide, shoulder + 1},
                                 {x, shoulder + 6},
                                 {x + 0.45 * wide, shoulder + 1},
                                 {x + wide, shoulder + 14}}},
           30, looks_.coat);
    c.shape(std::array<Point, 4>{{{x - wide - 14, shoulder + 12},
                                  {x + wide + 14, shoulder + 12},
                                  {x + wide + 20, 240},
                                  {x - wide - 20, 240}}},
            looks_.coat);
    c.shape(std::array<Point, 3>{{{x - 13, shoulder - 14}, {x + 13, shoulder - 14}, {x, shoulder + 16}}},
            shade);
    c.line(std::array<Point, 2>{{{x, shoulder + 16}, {x, 240}}}, 1.6, between(looks_.coat, {0, 0, 0}, 0.35));
    // Head.
    c.ellipse({x, head_y}, 66, 84, looks_.skin);
    if (looks_.long_hair) {
        // Parted in the middle.
        c.line(std::array<Point, 3>{{{x - 2, head_y - 39}, {x - 24, head_y - 30}, {x - 33, head_y - 6}}}, 14,
               looks_.hair);
        c.line(std::array<Point, 3>{{{x + 2, head_y - 39}, {x + 24, head_y - 30}, {x + 33, head_y - 6}}}, 14,
               looks_.hair);
    } else {
        c.ellipse({x, head_y - 35}, 66, 28, looks_.hair);
        c.line(std::array<Point, 2>{{{x - 31, head_y - 28}, {x - 33, head_y - 6}}}, 8, looks_.hair);
        c.line(std::array<Point, 2>{{{x + 31, head_y - 28}, {x + 33, head_y - 6}}}, 8, looks_.hair);
    }
    const Colour dark{0.16, 0.11, 0.10};
    const double brow = head_y - 15 - 2.5 * pose.mouth;
    for (const double side : {-1.0, 1.0}) {
        const double ex = x + 14 * side;
        c.line(std::array<Point, 3>{{{ex - 6, brow + 1}, {ex, brow - 1.5}, {ex + 6, brow + 1}}}, 2.2,
               looks_.hair);
        c.line(std::array<Point, 3>{{{ex - 5, head_y - 5}, {ex, head_y - 3}, {ex + 5, head_y - 5}}}, 2,
               dark); // closed
    }
    c.line(std::array<Point, 3>{{{x, head_y - 2}, {x + 3, head_y + 9}, {x - 1, head_y + 11}}}, 1.8, shade);
    // Mouth.
    const double mouth_y = head_y + 24, across = 23 - 9 * pose.round - 2 * pose.mouth;
    const Colour lip = between(looks_.skin, {0.62, 0.22, 0.22}, 0.6);
    c.ellipse({x, mouth_y + 2 * pose.mouth}, across + 5, 5 + 19 * pose.mouth, lip);
    if (pose.mouth > 0.04)
        c.ellipse({x, mouth_y + 2 * pose.mouth}, across, 1 + 17 * pose.mouth, {0.25, 0.07, 0.09});
}

void Scene::write_line(Canvas& c, Seconds t) const {
    // The phrase that is sung, or the next one when it begins within a second and a half.
    const auto phrase = std::find_if(truth_.phrases.begin(), truth_.phrases.end(),
                                     [&](const auto& p) { return t < p.span.end + Seconds(0.4); });
    if (phrase == truth_.phrases.end() || t < phrase->span.start - Seconds(1.5)) return;
    const auto number = static_cast<std::size_t>(phrase - truth_.phrases.begin());
    // Each word's share that is sung: words are lit syllable by syllable.
    std::string lit;
    for (const TrueNote& n : truth_.notes) {
        if (n.phrase != number || n.syllable == "-" || n.span.start > t + Seconds(0.03)) continue;
        const bool inside_word = n.syllable.starts_with('-');
        if (!inside_word && !lit.empty()) lit += ' ';
        lit += inside_word ? n.syllable.substr(1) : n.syllable;
    }
    const std::string& words = phrase->words;
    // Letters only, since the words have commas where the syllables have none.
    std::size_t end = 0;
    for (std::size_t k = 0; k < lit.size() && end < words.size(); ++end)
        if (std::tolower(words[end]) == std::tolower(lit[k])) ++k;
    const double size = words.size() > 40 ? 8.5 : 11;
    Point at{(kWidth - text_width(words, size)) / 2, 257};
    at = write_text(c, at, std::string_view(words).substr(0, end), size, {0.98, 0.92, 0.78});
    write_text(c, at, std::string_view(words).substr(end), size, {0.55, 0.57, 0.62});
}

media::Picture Scene::at(Seconds t) const {
    Canvas canvas = land_;
    draw_singer(canvas, pose_at(t));
    // The words' own strip, over the coat's lower end.
    canvas.shape(std::array<Point, 4>{{{-2, 234}, {482, 234}, {482, 272}, {-2, 272}}}, {0.05, 0.06, 0.08});
    write_line(canvas, t);
    return {kWidth, kHeight, t, canvas.bytes()};
}

} // namespace luft::sample
