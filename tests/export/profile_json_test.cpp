#include "export/profile_html.h"
#include "export/profile_json.h"
#include "export/profile_text.h"
#include "profile/demo_source.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace luft;

TEST_CASE("A profile's JSON is read back with the figures of the profile") {
    const auto p = profile::make_profile(profile::demo::source());
    const auto j = nlohmann::json::parse(exports::profile_json(p));
    CHECK(j["schema"] == "luftpause-profile/1");
    CHECK(j["counts"]["notes"] == p.notes);
    CHECK(j["facets"].size() == p.facets.size());
    CHECK(j["facets"][0]["shades"][0]["count"] == p.facets[0].shades[0].count);
    CHECK(j["range"]["lowest"]["note"] == "B3");
    CHECK(j["watch"].size() == p.watch.size());
    CHECK(j["cautions"].size() == 3);
}

TEST_CASE("A hint stands in its facet's JSON, text and page, with its evidence and worded as a hint") {
    auto p = profile::make_profile(profile::demo::source());
    const auto facet = std::ranges::find(p.facets, "intonation", &profile::FacetProfile::key);
    REQUIRE(facet != p.facets.end());
    const auto at = static_cast<std::size_t>(facet - p.facets.begin());
    facet->hints.clear(); // the demo's pitch steps at once, as no voice does
    CHECK(nlohmann::json::parse(exports::profile_json(p))["facets"][at]["hints"].empty());
    facet->hints.push_back({"pitch-corrected",
                            "The pitch may have been <corrected>.",
                            2,
                            {{"step_time_ms", "ms", 24.26, 17, 40}}});
    const auto hint = nlohmann::json::parse(exports::profile_json(p))["facets"][at]["hints"].at(0);
    CHECK(hint["hint"] == "pitch-corrected");
    CHECK(hint["signs"] == 2);
    CHECK(hint["evidence"][0] == nlohmann::json{{"measure", "step_time_ms"},
                                                {"unit", "ms"},
                                                {"value", 24.3},
                                                {"count", 17},
                                                {"speaks_under", 40.0}});
    CHECK(exports::profile_text(p).find("The pitch may have been <corrected>. [hint]") != std::string::npos);
    CHECK(exports::profile_html(p, profile::demo::source())
              .find("The pitch may have been &lt;corrected&gt;.") != std::string::npos);
}

TEST_CASE("What can't be had is null in JSON, and broken UTF-8 doesn't break it") {
    profile::Source s;
    s.piece.title = "bro\xFFken \"title\"";
    const auto j = nlohmann::json::parse(exports::profile_json(profile::make_profile(s)));
    CHECK(j["range"].is_null());
    CHECK(j["listening"].is_null());
    CHECK(j["performance"]["performer"].is_null());
    CHECK(j["piece"] == "bro\xEF\xBF\xBDken \"title\"");
}
