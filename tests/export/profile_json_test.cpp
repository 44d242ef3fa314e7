#include "export/profile_json.h"
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

TEST_CASE("What can't be had is null in JSON, and broken UTF-8 doesn't break it") {
    profile::Source s;
    s.piece.title = "bro\xFFken \"title\"";
    const auto j = nlohmann::json::parse(exports::profile_json(profile::make_profile(s)));
    CHECK(j["range"].is_null());
    CHECK(j["listening"].is_null());
    CHECK(j["performance"]["performer"].is_null());
    CHECK(j["piece"] == "bro\xEF\xBF\xBDken \"title\"");
}
