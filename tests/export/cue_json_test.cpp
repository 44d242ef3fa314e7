// The cue sheet as JSON.
#include "export/cue_json.h"
#include "export/cue_material.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

/// "1001/30000" or "3".
Rational exact_of(const nlohmann::json& time) {
    const auto text = time.at("exact").get<std::string>();
    const auto line = text.find('/');
    return line == std::string::npos
               ? Rational(std::stoll(text))
               : Rational(std::stoll(text.substr(0, line)), std::stoll(text.substr(line + 1)));
}

} // namespace

TEST_CASE("exact times in the JSON add up to the running time, and agree with seconds and frames") {
    const auto sheet = script::lay_out(cue_source());
    const auto json = nlohmann::json::parse(cue_json(cue_source(), sheet));
    CHECK(json.at("schema") == "luftpause-cues/1");
    CHECK(json.at("frame_rate") == "30000/1001");
    CHECK(json.at("drop_frame") == true);
    Rational sum;
    for (const auto& s : json.at("segments")) {
        const auto& in = s.at("programme").at("in");
        const auto& out = s.at("programme").at("out");
        CHECK(exact_of(in) == sum);
        CHECK(in.at("seconds").get<double>() == Approx(exact_of(in).as_double()));
        CHECK(Rational(in.at("frame").get<std::int64_t>()) == exact_of(in) * Rational(30000, 1001));
        sum += exact_of(out) - exact_of(in);
    }
    CHECK(sum == exact_of(json.at("running_time")));
    CHECK(sum == exact_of(json.at("talk_time")) + exact_of(json.at("quoted")));
}

TEST_CASE("texts come through the JSON as they are, broken bytes replaced") {
    auto source = cue_source();
    source.items[4].text = "broken \xC3 byte";
    const auto json = nlohmann::json::parse(cue_json(source, script::lay_out(source)));
    CHECK(json.at("segments")[2].at("text") == kNasty);
    CHECK(json.at("segments")[2].at("stop") == 1);
    CHECK(json.at("segments")[3].at("speed") == "1/2");
    CHECK(json.at("segments").back().at("text") == "broken \xEF\xBF\xBD byte");
    CHECK(json.at("asides").size() == 1);
}

TEST_CASE("warnings in the JSON name their item and remedy") {
    auto source = cue_source();
    source.items[3].at = Seconds(40);
    const auto json = nlohmann::json::parse(cue_json(source, script::lay_out(source)));
    bool found = false;
    for (const auto& w : json.at("warnings"))
        if (w.at("kind") == "stop_in_note") {
            found = true;
            CHECK(w.at("item") == 4);
            CHECK(w.at("remedy_s").get<double>() == Approx(44));
        }
    CHECK(found);
}
