#include "profile/demo_source.h"
#include "profile/propose.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace luft;
using namespace luft::profile;

TEST_CASE("Proposals are told apart from the coach's moments and hold what a coach needs to judge them") {
    const auto s = demo::source();
    const auto moments = propose_moments(s);
    REQUIRE(moments.size() == 12);
    for (const auto& m : moments) {
        INFO(m.evidence);
        CHECK(m.performance == s.performance.id);
        CHECK(m.state == project::MarkState::proposed);
        CHECK(m.origin == project::Origin::detected);
        CHECK(m.remark.empty());
        CHECK(m.evidence.find_first_of("0123456789") != std::string::npos);
        CHECK(m.evidence.find("sure (0.") != std::string::npos);
        REQUIRE(m.shades.size() == 1);
        CHECK(s.vocabulary.shade(m.shades[0]));
        CHECK((m.drill.empty() || s.vocabulary.drill(m.drill)));
        CHECK(m.span.start >= Seconds(0));
        CHECK(m.span.end > m.span.start);
        CHECK(m.span.end <= s.listening->duration);
    }
    CHECK(std::ranges::is_sorted(moments, {}, [](const project::Moment& m) { return m.span.start; }));
}

TEST_CASE("Proposals spread over the song and over the facets") {
    const auto s = demo::source();
    std::set<std::string> facets;
    std::set<int> quarters;
    for (const auto& m : propose_moments(s)) {
        facets.insert(m.shades[0].facet);
        quarters.insert(static_cast<int>(m.span.middle() / s.listening->duration * 4));
    }
    CHECK(facets.size() >= 6);
    CHECK(quarters.size() == 4);
}

TEST_CASE("A mid-phrase breath is among the proposals, and a breathy onset isn't held against the singer") {
    bool breath = false;
    for (const auto& m : propose_moments(demo::source())) {
        breath |= m.shades[0] == vocabulary::Tag{"breath", "mid-phrase"};
        if (m.shades[0].facet == "onset" && m.shades[0].shade != "balanced")
            CHECK(m.verdict == project::Verdict::explain);
    }
    CHECK(breath);
}

TEST_CASE("No more than asked for are proposed, none twice, and none that the coach has already") {
    auto s = demo::source();
    CHECK(propose_moments(s, 3).size() == 3);
    CHECK(propose_moments(s, 0).empty());
    CHECK(propose_moments({}).empty());
    for (auto m : propose_moments(s)) {
        m.state = project::MarkState::kept;
        s.moments.push_back(m);
    }
    for (const auto& m : propose_moments(s))
        for (const auto& kept : s.moments)
            CHECK_FALSE((kept.span == m.span && kept.shades == m.shades));
}

TEST_CASE("The same source gives the same proposals, whatever the order of its marks") {
    auto s = demo::source();
    const auto first = propose_moments(s);
    std::ranges::reverse(s.marks);
    const auto second = propose_moments(s);
    REQUIRE(first.size() == second.size());
    for (std::size_t i = 0; i < first.size(); ++i) {
        CHECK(first[i].span == second[i].span);
        CHECK(first[i].evidence == second[i].evidence);
    }
}
