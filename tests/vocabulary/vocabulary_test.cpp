#include "base/error.h"
#include "vocabulary/vocabulary.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace luft;
using namespace luft::vocabulary;

namespace {

Vocabulary small() {
    Vocabulary v;
    v.facets = {{"onset",
                 "Onset",
                 "How it starts.",
                 Basis::measured,
                 {{"glottal", "hard", "A click.", Leaning::watch}}}};
    v.drills = {{"whole", "Whole", "a", {"b"}, "", {{"onset", ""}}},
                {"other", "Other", "a", {"b"}, "", {{"offset", "clean"}}},
                {"exact", "Exact", "a", {"b"}, "", {{"onset", "glottal"}, {"onset", ""}}}};
    return v;
}

} // namespace

TEST_CASE("facets, shades and drills are found by key, and unknown keys give nothing") {
    const Vocabulary v = small();
    REQUIRE(v.facet("onset"));
    CHECK(v.facet("onset")->name == "Onset");
    CHECK_FALSE(v.facet("onse"));
    REQUIRE(v.shade({"onset", "glottal"}));
    CHECK(v.shade({"onset", "glottal"})->name == "hard");
    CHECK_FALSE(v.shade({"onset", "soft"}));
    CHECK_FALSE(v.shade({"nothing", "glottal"}));
    REQUIRE(v.drill("exact"));
    CHECK_FALSE(v.drill(""));
}

TEST_CASE("drills made for exactly the shade come before those for its whole facet, each once") {
    const Vocabulary v = small();
    const auto found = v.drills_for({"onset", "glottal"});
    REQUIRE(found.size() == 2);
    CHECK(found[0]->key == "exact");
    CHECK(found[1]->key == "whole");
    const auto facet_only = v.drills_for({"onset", "breathy"});
    REQUIRE(facet_only.size() == 2);
    CHECK(facet_only[0]->key == "whole");
    CHECK(v.drills_for({"vibrato", "wide"}).empty());
}

TEST_CASE("a tag is read from its text form and written back") {
    const Tag tag = parse_tag("switch-2:so-so");
    CHECK(tag == Tag{"switch-2", "so-so"});
    CHECK(tag_text(tag) == "switch-2:so-so");
}

TEST_CASE("text that isn't facet:shade is refused") {
    for (const char* text : {"", ":", "onset", "onset:", ":glottal", "Onset:glottal", "onset:glottal:x",
                             "onset: glottal", "1set:glottal", "onset:gl\xC3\xB6tt"}) {
        INFO(text);
        try {
            parse_tag(text);
            FAIL_CHECK("was taken");
        } catch (const Error& e) {
            CHECK(e.fault() == Fault::bad_request);
        }
    }
}

TEST_CASE("a key is 1 to 40 of a-z, 0-9 and dash, starting with a letter") {
    for (const char* good : {"a", "a1", "long-line", "a-"})
        CHECK(is_key(good));
    for (const char* bad : {"", "1a", "-a", "A", "a b", "a_b", "a:b", "\xC3\xA4"})
        CHECK_FALSE(is_key(bad));
    CHECK(is_key(std::string(40, 'k')));
    CHECK_FALSE(is_key(std::string(41, 'k')));
}
