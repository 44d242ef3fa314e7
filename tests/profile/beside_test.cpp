// Profiles side by side, and what is said to stand out.
#include "profile/apart.h"
#include "profile/beside.h"
#include "profile/beside_words.h"
#include "profile/demo_source.h"
#include "profile/statistics.h"
#include "singer/random.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::profile;

namespace {

Summed summed(singer::Random& random, int count, double middle, double spread) {
    std::vector<double> values;
    for (int i = 0; i < count; ++i)
        values.push_back(middle + spread * random.bell());
    return {*percentile(values, 0.5), *percentile(values, 0.1), *percentile(values, 0.9), count};
}

Measure measure(const std::string& key, double median, double spread, int count) {
    Measure m;
    m.key = key, m.name = key, m.unit = "Hz", m.digits = 1;
    m.median = median, m.low = median - spread, m.high = median + spread, m.count = count;
    return m;
}

ShadeShare share(const std::string& shade, int count, int out_of) {
    ShadeShare s;
    s.tag = {"f", shade}, s.name = shade, s.axis = "axis";
    s.of = "of " + std::to_string(out_of) + " notes";
    s.count = count, s.out_of = out_of;
    s.share = static_cast<double>(count) / out_of;
    return s;
}

Profile with(const std::string& label, std::vector<Measure> measures, std::vector<ShadeShare> shades = {},
             vocabulary::Basis basis = vocabulary::Basis::measured) {
    Profile p;
    p.label = label;
    FacetProfile facet;
    facet.key = "f", facet.name = "Facet", facet.basis = basis;
    facet.measures = std::move(measures);
    facet.shades = std::move(shades);
    for (const ShadeShare& s : facet.shades)
        if (std::ranges::find(facet.axes, s.axis, &ShadeAxis::name) == facet.axes.end())
            facet.axes.push_back({s.axis, s.of, s.out_of});
    p.facets = {facet};
    return p;
}

} // namespace

// Fisher 1935, The Logic of Inductive Inference, JRSS 98: of 13 convicts' identical twins 10 were convicted,
// of 17 fraternal ones 2; as many or more alone have 619/1330665. And the tea of The Design of Experiments:
// one arrangement of 70, doubled for both sides.
TEST_CASE("the exact test has Fisher's own figures") {
    CHECK(fisher(10, 13, 2, 17) == Approx(0.000537).margin(0.000001));
    CHECK(fisher(10, 13, 2, 17) > 619.0 / 1330665);
    CHECK(fisher(4, 4, 0, 4) == Approx(2.0 / 70));
    CHECK(fisher(3, 4, 1, 4) == Approx(34.0 / 70));
    CHECK(fisher(0, 20, 0, 5) == Approx(1));
    CHECK(fisher(1, 0, 0, 5) == 1);
}

TEST_CASE("medians of one and the same spread are almost never apart, those of clearly different ones are") {
    singer::Random random(31);
    int same = 0, other = 0;
    for (int i = 0; i < 2000; ++i) {
        const int n = 5 + i % 40, m = 5 + (i / 40) % 40;
        same += apart(summed(random, n, 5, 1), summed(random, m, 5, 1));
        other += apart(summed(random, n + 15, 5, 1), summed(random, m + 15, 8, 1));
    }
    INFO("claimed of the same " << same << ", of others " << other);
    CHECK(same <= 6); // 3 in 1000 would be 6
    CHECK(other > 1900);
    CHECK_FALSE(apart({5, 4, 6, 400}, {5.8, 4.8, 6.8, 400})); // sure, but usual in the other, too
    CHECK_FALSE(apart({5, 4, 6, 5}, {6.5, 5.5, 7.5, 5}));     // rare in the other, but of five values
    CHECK(apart({5, 4, 6, 60}, {6.5, 5.5, 7.5, 60}));
}

TEST_CASE("what stands out is said of the one that is beyond all others, with their figures") {
    const auto all = set_beside({with("march", {measure("rate", 5.2, 0.2, 30), measure("even", 5, 1, 30)}),
                                 with("may", {measure("rate", 5.3, 0.2, 30), measure("even", 5, 1, 30)}),
                                 with("june", {measure("rate", 6.4, 0.2, 30), measure("even", 5, 1, 30)})});
    REQUIRE(all.facets.size() == 1);
    REQUIRE(all.facets[0].rows.size() == 2);
    CHECK(all.columns[0].stands_out.empty());
    CHECK(all.columns[1].stands_out.empty());
    REQUIRE(all.columns[2].stands_out.size() == 1);
    CHECK(all.columns[2].stands_out[0] == "Facet: rate higher, 6.4 Hz; march 5.2 Hz, may 5.3 Hz.");
    CHECK(all.facets[0].rows[0].cells[2].stands == 1);
    CHECK(all.facets[0].rows[0].cells[0].stands == 0); // of the low ones neither is beyond the other
}

TEST_CASE("nothing stands out of a single performance, of few values, or of what is only a hint") {
    const auto high = measure("rate", 6.4, 0.2, 30), low = measure("rate", 5.2, 0.2, 30),
               few = measure("rate", 6.4, 0.01, kLeastBeside - 1);
    CHECK(set_beside({with("a", {high})}).columns[0].stands_out.empty());
    CHECK(set_beside({with("a", {few}), with("b", {low})}).columns[0].stands_out.empty());
    for (const auto basis : {vocabulary::Basis::hint, vocabulary::Basis::coach}) {
        const auto all = set_beside({with("a", {high}, {}, basis), with("b", {low}, {}, basis)});
        CHECK(all.columns[0].stands_out.empty());
        CHECK(cell_text(all.facets[0].rows[0], all.facets[0].rows[0].cells[0]) == "6.4 Hz");
    }
    CHECK_FALSE(set_beside({with("a", {high}), with("b", {low})}).columns[0].stands_out.empty());
    CHECK(set_beside({}).columns.empty());
}

TEST_CASE("a shade that one never shows is told as none of so many, and stands out only beyond chance") {
    const auto all = set_beside({with("a", {}, {share("glottal", 14, 40), share("breathy", 3, 40)}),
                                 with("b", {}, {share("breathy", 2, 36)})});
    REQUIRE(all.facets[0].rows.size() == 2);
    const BesideRow& glottal = all.facets[0].rows[0];
    REQUIRE(glottal.cells[1].value);
    CHECK(cell_text(glottal, glottal.cells[1]) == "none");
    CHECK(basis_text(glottal, glottal.cells[0]) == "14 of 40 notes");
    CHECK(all.columns[0].stands_out ==
          std::vector<std::string>{"Facet: glottal (axis) more often, 35 % of 40 notes; b none."});
    CHECK(all.columns[1].stands_out ==
          std::vector<std::string>{"Facet: glottal (axis) less often, none of 36 notes; a 35 %."});
    const auto chance = set_beside({with("a", {}, {share("glottal", 4, 20), share("breathy", 1, 20)}),
                                    with("b", {}, {share("breathy", 2, 20)})});
    CHECK(chance.columns[0].stands_out.empty());
}

TEST_CASE("a shade alone on its axis that one shows and the other never does stands out in both") {
    auto source = demo::source();
    const auto with_scoops = [&](const std::string& label, bool scoop) {
        source.performance.label = label;
        for (auto& mark : source.marks)
            if (auto* note = std::get_if<marks::Note>(&mark.what))
                note->scoop = scoop ? std::optional(Cents(120)) : std::nullopt;
        return make_profile(source);
    };
    const Profile scooped = with_scoops("a", true), plain = with_scoops("b", false);
    const auto all = set_beside({scooped, plain});
    const auto facet = std::ranges::find(all.facets, "intonation", &BesideFacet::key);
    REQUIRE(facet != all.facets.end());
    const auto row = std::ranges::find(facet->rows, "shade:way into the note:scooped", &BesideRow::key);
    REQUIRE(row != facet->rows.end());
    CHECK(cell_text(*row, row->cells[1]) == "none");
    CHECK(basis_text(*row, row->cells[1]) == row->cells[0].of);
    CHECK(row->cells[1].out_of == row->cells[0].out_of);
    CHECK(row->cells[0].stands == 1);
    CHECK(row->cells[1].stands == -1);

    // Where there was nothing that could show it, nothing is said of it.
    source.marks.clear(), source.moments.clear();
    source.performance.label = "c";
    const auto none = set_beside({scooped, make_profile(source)});
    for (const auto& one : none.facets)
        for (const auto& r : one.rows)
            CHECK_FALSE(r.cells[1].value);
}

TEST_CASE("a share of time stands out only where as many places more show it") {
    const auto chest = [](int count, double time) {
        ShadeShare s = share("chest", count, 40);
        s.share = time, s.of = "of 1 min 12 s of singing";
        return s;
    };
    // 20 long notes and 35 short ones: more of the time, fewer of the notes.
    const auto across = set_beside({with("a", {}, {chest(20, 0.7)}), with("b", {}, {chest(35, 0.5)})});
    CHECK(fisher(20, 40, 35, 40) < 0.0027);
    CHECK(across.columns[0].stands_out.empty());
    CHECK(across.columns[1].stands_out.empty());
    const auto along = set_beside({with("a", {}, {chest(20, 0.5)}), with("b", {}, {chest(35, 0.7)})});
    CHECK(along.columns[1].stands_out ==
          std::vector<std::string>{"Facet: chest (axis) more often, 70 % of 1 min 12 s of singing; a 50 %."});
    CHECK(along.columns[0].stands_out.size() == 1);
}

TEST_CASE("what stands out is told against those only that it was held against") {
    auto a = with("a", {measure("length", 0.9, 0.05, 30)}), b = with("b", {measure("length", 0.3, 0.05, 30)}),
         c = with("c", {measure("length", 1.4, 0.05, 30)}),
         few = with("d", {measure("length", 1.6, 0.05, kLeastBeside - 1)});
    for (Profile* p : {&a, &b, &c, &few})
        p->listening = project::Listening{}, p->facets[0].key = "breath";
    c.listening->setting = voice::Setting::accompanied;
    const auto all = set_beside({a, b, c, few});
    CHECK(all.columns[0].stands_out == std::vector<std::string>{"Facet: length higher, 0.9 Hz; b 0.3 Hz."});
    CHECK(all.columns[1].stands_out == std::vector<std::string>{"Facet: length lower, 0.3 Hz; a 0.9 Hz."});
    CHECK(all.columns[2].stands_out.empty());
}

TEST_CASE("what nobody has looked for is left empty, and what was looked for and not found is 0") {
    auto source = demo::source();
    const auto words = [&] {
        std::string out;
        for (const auto& row : whole_rows(set_beside({make_profile(source)})))
            out += row.name + "=" + row.cells.at(0) + ";";
        return out;
    };
    std::erase_if(source.marks, [](const auto& m) { return m.kind() != project::MarkKind::breath; });
    REQUIRE(source.listening);
    CHECK(words().find("Notes=0;") != std::string::npos);
    CHECK(words().find("Sung=0.0 s;") != std::string::npos);
    source.listening.reset(); // breaths set by the coach
    CHECK(words().find("Sung=;") != std::string::npos);
    CHECK(words().find("Notes=;Breaths=1") != std::string::npos);
    source.marks.clear();
    CHECK(words().find("Notes=;Breaths=;Phrases=;Register switches=;") != std::string::npos);
}

TEST_CASE("breaths of a voice alone and of an accompanied one aren't told apart") {
    auto alone = with("a", {measure("length", 0.9, 0.05, 30)}),
         band = with("b", {measure("length", 0.3, 0.05, 30)});
    alone.listening = band.listening = project::Listening{};
    alone.facets[0].key = band.facets[0].key = "breath";
    CHECK(set_beside({alone, band}).columns[0].stands_out.size() == 1);
    band.listening->setting = voice::Setting::accompanied;
    CHECK(set_beside({alone, band}).columns[0].stands_out.empty());
    CHECK(unlike_conditions(set_beside({alone, band})).size() == 1);
    alone.facets[0].key = band.facets[0].key = "vibrato";
    CHECK(set_beside({alone, band}).columns[0].stands_out.size() == 1);
}

TEST_CASE("rows of several profiles keep each one's order, whoever lacks which") {
    const auto m = [](const char* key) { return measure(key, 1, 1, 9); };
    const auto all =
        set_beside({with("a", {m("one"), m("three")}), with("b", {m("one"), m("two"), m("three")}),
                    with("c", {m("three"), m("four")})});
    std::vector<std::string> keys;
    for (const auto& row : all.facets.at(0).rows)
        keys.push_back(row.key);
    CHECK(keys == std::vector<std::string>{"one", "two", "three", "four"});
    CHECK_FALSE(all.facets[0].rows[1].cells[0].value);
    CHECK(all.facets[0].rows[3].cells[2].value);
}

TEST_CASE("a performance beside itself has each of its figures twice, and nothing stands out") {
    const Profile p = make_profile(demo::source());
    const auto all = set_beside({p, p});
    std::size_t rows = 0, expected = 0;
    for (const auto& facet : all.facets)
        for (const auto& row : facet.rows) {
            ++rows;
            CHECK(row.cells[0].value == row.cells[1].value);
            CHECK(row.cells[0].value);
        }
    for (const auto& facet : p.facets)
        expected += facet.measures.size() + facet.shades.size();
    CHECK(rows == expected);
    CHECK(all.columns[0].stands_out.empty());
    CHECK(all.columns[1].stands_out.empty());
}
