// The default vocabulary against the list of facets and shades that the program promises, and against the
// rules that its own header states.
#include "vocabulary/vocabulary.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <set>

using namespace luft::vocabulary;

namespace {

using Keys = std::vector<std::string>;

/// In the order in which a profile goes through them.
const std::vector<std::pair<std::string, Keys>>& promised() {
    static const std::vector<std::pair<std::string, Keys>> all = {
        {"onset", {"glottal", "breathy", "balanced"}},
        {"offset", {"clean", "breathy", "trailing"}},
        {"vowel-shape", {"tall", "spread", "rounded", "narrow", "neutral", "migrating"}},
        {"larynx", {"low", "neutral", "high", "rising"}},
        {"dynamics",
         {"soft", "moderate", "loud", "crescendo", "decrescendo", "swell", "steady", "fluctuating"}},
        {"register", {"chest", "head", "mix", "switch-smooth", "switch-break"}},
        {"closure", {"firm", "balanced", "breathy", "pressed"}},
        {"resonance", {"ringing", "plain", "bright", "dark", "nasal"}},
        {"breath", {"audible", "silent", "quick", "full", "well-placed", "mid-phrase"}},
        {"intonation", {"centred", "sharp", "flat", "drifting", "scooped"}},
        {"vibrato", {"straight", "even", "uneven", "wide", "narrow", "fast", "slow", "late"}},
        {"phrasing", {"long-line", "even", "broken", "joined"}},
        {"diction", {"clear", "swallowed", "hard-consonants", "soft-consonants"}},
        {"posture", {"aligned", "at-ease", "chin-raised", "shoulders-raised", "collapsed"}},
        {"embellishment", {"plain", "turn", "run", "slide", "grace-note"}},
    };
    return all;
}

bool is_sentence(const std::string& text) {
    return text.size() > 10 && text.back() == '.';
}

} // namespace

TEST_CASE("the default vocabulary has the promised facets and shades in their order") {
    const Vocabulary v = default_vocabulary();
    REQUIRE(v.facets.size() == promised().size());
    for (std::size_t i = 0; i < v.facets.size(); ++i) {
        CHECK(v.facets[i].key == promised()[i].first);
        Keys shades;
        for (const Shade& s : v.facets[i].shades)
            shades.push_back(s.key);
        CHECK(shades == promised()[i].second);
    }
}

TEST_CASE("what sound can't show rests on the coach, and what it only hints at says so") {
    const Vocabulary v = default_vocabulary();
    const std::map<std::string, Basis> other = {{"vowel-shape", Basis::hint},   {"larynx", Basis::hint},
                                                {"closure", Basis::hint},       {"resonance", Basis::hint},
                                                {"diction", Basis::coach},      {"posture", Basis::coach},
                                                {"embellishment", Basis::coach}};
    for (const Facet& f : v.facets) {
        INFO(f.key);
        CHECK(f.basis == (other.contains(f.key) ? other.at(f.key) : Basis::measured));
        CHECK_FALSE(f.own);
    }
}

TEST_CASE("every facet and shade has a valid key, a name and a description that is a sentence") {
    for (const Facet& f : default_vocabulary().facets) {
        INFO(f.key);
        CHECK(is_key(f.key));
        CHECK_FALSE(f.name.empty());
        CHECK(is_sentence(f.description));
        for (const Shade& s : f.shades) {
            INFO(s.key);
            CHECK(is_key(s.key));
            CHECK_FALSE(s.name.empty());
            CHECK(is_sentence(s.description));
        }
    }
}

TEST_CASE("every shade to watch has a drill made for exactly it") {
    const Vocabulary v = default_vocabulary();
    int watched = 0;
    for (const Facet& f : v.facets)
        for (const Shade& s : f.shades) {
            if (s.leaning != Leaning::watch) continue;
            ++watched;
            INFO(f.key << ":" << s.key);
            const auto drills = v.drills_for({f.key, s.key});
            REQUIRE_FALSE(drills.empty());
            CHECK(std::ranges::find(drills.front()->trains, Tag{f.key, s.key}) !=
                  drills.front()->trains.end());
        }
    CHECK(watched >= 20);
}

TEST_CASE("every drill has a unique key, an aim, steps in sentences, and trains shades that exist") {
    const Vocabulary v = default_vocabulary();
    CHECK(v.drills.size() >= 20);
    std::set<std::string> keys;
    for (const Drill& d : v.drills) {
        INFO(d.key);
        CHECK(is_key(d.key));
        CHECK(keys.insert(d.key).second);
        CHECK_FALSE(d.title.empty());
        CHECK(is_sentence(d.aim));
        CHECK(d.steps.size() >= 3);
        for (const std::string& step : d.steps)
            CHECK(is_sentence(step));
        if (!d.caution.empty()) CHECK(is_sentence(d.caution));
        CHECK_FALSE(d.trains.empty());
        CHECK_FALSE(d.own);
        for (const Tag& t : d.trains) {
            INFO(tag_text(t));
            CHECK(v.facet(t.facet));
            if (!t.shade.empty()) CHECK(v.shade(t));
        }
    }
}
