// The sample project's two performances: tenor and alto, three semitones and some tempo apart, each with a
// band of its own, which the ear hears from the committed recordings.
#include "base/bytes.h"
#include "compare/heard.h"
#include "media/media.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

const std::filesystem::path kSample = LUFT_SAMPLE_PROJECT;

/// Ids go up with the syllables; a syllable "-" is sung on, an added note.
Performed performed(const char* media, const char* truth) {
    const auto source = media::open_sound(open_file(kSample / "media" / media));
    Performed out;
    out.side = side_of(marks::listen(*source));
    out.side.harmony = hear_harmony(*source, out.side.tuning);
    std::ifstream file(kSample / "truth" / truth);
    singer::Truth notes;
    std::vector<int> ids;
    int id = 0;
    const auto all = nlohmann::json::parse(file);
    for (const auto& n : all.at("notes")) {
        notes.notes.emplace_back().span = {Seconds(n.at("start_s").get<double>()),
                                           Seconds(n.at("end_s").get<double>())};
        ids.push_back(n.at("syllable").get<std::string>() == "-" ? -1 : id++);
    }
    out.notes = placed(notes, ids, out.side);
    return out;
}

} // namespace

TEST_CASE("the sample's two performances are aligned within 50 ms, three semitones apart") {
    const Performed a = performed("over-water-vasslow.mp4", "over-water-vasslow.json"),
                    b = performed("over-water-marnik.mkv", "over-water-marnik.json");
    const Alignment found = align(a.side, b.side);
    const Errors e = errors_of(a, b, found);
    INFO("median " << e.median_ms << " ms, 95 % " << e.p95_ms << " ms, lost " << e.lost << " of " << e.shared
                   << ", pairs right " << e.right_pairs << ", wrong " << e.wrong_pairs);
    CHECK(e.shared == 56);
    CHECK(found.semitones == 3);
    CHECK(std::abs(found.tuning.value()) < 10);
    CHECK(e.lost == 0);
    CHECK(e.median_ms < 50);
    CHECK(e.p95_ms < 200);
    CHECK(e.right_pairs >= 0.9);
    CHECK(e.wrong_pairs <= 0.15); // measured: 0.09, at the turn
    for (const TempoPoint& p : tempo_curve(found))
        CHECK(p.speed == Approx(96.0 / 84).epsilon(0.1));

    const Counterparts pairs = find_counterparts(a.side, b.side, found);
    REQUIRE_FALSE(pairs.phrases.empty());
    CHECK(pairs.phrases[0].a == std::vector<std::size_t>{0, 1}); // where the alto saves the breath
    CHECK(pairs.phrases[0].b == std::vector<std::size_t>{0});
    CHECK(pairs.phrases_only_a.empty());
    CHECK(pairs.phrases_only_b.empty());
    // The alto's turn on "bay" is all that either adds.
    CHECK(pairs.added_by_a.empty());
    REQUIRE_FALSE(pairs.added_by_b.empty());
    for (const std::size_t i : pairs.added_by_b)
        CHECK(std::ranges::any_of(
            b.notes, [&](const PlacedNote& n) { return n.id < 0 && n.span.overlaps(b.side.notes[i].span); }));
}
