// The values of a mark's JSON, read flat.
#include "project/detail_values.h"

#include <catch2/catch.hpp>

using luft::project::DetailValues;

namespace {

DetailValues read(const std::string& json) {
    DetailValues values;
    values.read(json);
    return values;
}

} // namespace

TEST_CASE("values are found by their names, in the object and in objects within") {
    const DetailValues v = read(
        R"({"midi": 60.5, "leap": true, "onset": {"kind": "breathy", "confidence": 1}, "vibrato": null})");
    CHECK(v.number("", "midi") == 60.5);
    CHECK(v.truth("", "leap"));
    CHECK(v.text("onset", "kind") == "breathy");
    CHECK(v.number("onset", "confidence") == 1.0);
    CHECK(v.has_group("onset"));
    CHECK_FALSE(v.has_group("vibrato"));
    CHECK(v.is_null("", "vibrato"));
    CHECK(v.lacks("", "vibrato"));
    CHECK(v.lacks("", "drift"));
    CHECK_FALSE(v.lacks("", "midi"));
}

TEST_CASE("what isn't there, or is of another kind, is missing") {
    const DetailValues v = read(R"({"midi": "high", "kind": 1, "onset": 3, "leap": 1})");
    CHECK_THROWS_AS(v.number("", "midi"), DetailValues::Missing);
    CHECK_THROWS_AS(v.text("", "kind"), DetailValues::Missing);
    CHECK_THROWS_AS(v.has_group("onset"), DetailValues::Missing);
    CHECK_THROWS_AS(v.has_group("offset"), DetailValues::Missing);
    CHECK_THROWS_AS(v.truth("", "leap"), DetailValues::Missing);
    CHECK_THROWS_AS(v.number("onset", "midi"), DetailValues::Missing);
}

TEST_CASE("lists and what lies deeper are passed over, and take no other value's place") {
    const DetailValues v = read(R"({"a": [1, {"b": 2, "c": [3]}], "d": {"e": {"b": 4}, "f": 5}, "b": 6})");
    CHECK(v.number("", "b") == 6);
    CHECK(v.number("d", "f") == 5);
    CHECK_THROWS_AS(v.number("d", "b"), DetailValues::Missing);
    CHECK_THROWS_AS(v.number("a", "b"), DetailValues::Missing);
    CHECK_THROWS_AS(v.number("", "a"), DetailValues::Missing);
}

TEST_CASE("of two values of one name the later one counts") {
    CHECK(read(R"({"midi": 1, "midi": 2})").number("", "midi") == 2);
}

TEST_CASE("only an object that is whole JSON is read") {
    const auto bad =
        GENERATE("", "1", "null", "[]", "[{\"midi\": 1}]", "\"midi\"", "{", "{\"midi\": 1", "{\"midi\": 1}}",
                 "{\"midi\": 1} x", "{\"midi\": \"\xff\"}", "{\"midi\": NaN}", "{\"midi\": 1e999}");
    INFO(bad);
    CHECK_THROWS_AS(read(bad), DetailValues::Missing);
}

TEST_CASE("reading anew forgets what was") {
    DetailValues v;
    v.read(R"({"midi": 1, "leap": true})");
    v.read(R"({"cents": 2})");
    CHECK(v.number("", "cents") == 2);
    CHECK(v.lacks("", "midi"));
    CHECK(v.lacks("", "leap"));
}
