#include "script/voices.h"

#include <catch2/catch.hpp>

namespace luft::script {
namespace {

TEST_CASE("recorded talk lies beside the project, under the project's own name") {
    CHECK(voice_folder("songs/mill.luft") == "songs/mill-voice");
    CHECK(voice_folder("mill at night.v2.luft") == "mill at night.v2-voice");
}

TEST_CASE("each part of the script has its own file") {
    CHECK(voice_file("songs/mill-voice", {12}) == "songs/mill-voice/talk-12.wav");
}

} // namespace
} // namespace luft::script
