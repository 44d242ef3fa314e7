#include "export/profile_text.h"
#include "profile/demo_source.h"

#include <catch2/catch.hpp>

#include <sstream>

using namespace luft;

TEST_CASE("A profile's text names the facets, the lists, and the cautions") {
    const auto text = exports::profile_text(profile::make_profile(profile::demo::source()));
    for (const char* part : {"Technique profile: The Lantern Road", "Mara Ellin (A)", "Strengths", "To watch",
                             "To practise", "Onset (measured)", "Closure (a hint only)",
                             "Posture (the coach's judgement)", "[coach]", "[hint]", "NIDCD"})
        CHECK(text.find(part) != std::string::npos);
}

TEST_CASE("Lines of the text stay within 78 columns") {
    std::istringstream lines(exports::profile_text(profile::make_profile(profile::demo::source())));
    for (std::string line; std::getline(lines, line);) {
        std::size_t columns = 0;
        for (const char c : line)
            columns += (static_cast<unsigned char>(c) & 0xC0) != 0x80 ? 1 : 0;
        INFO(line);
        CHECK(columns <= 78);
    }
}
