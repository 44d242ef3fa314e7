#include "signal/stereo.h"

#include <catch2/catch.hpp>

using namespace luft;
using signal::Stereo;

TEST_CASE("mono goes to both sides, two channels stay, five and a low one are mixed without clipping") {
    using enum ChannelRole;
    std::vector<float> out;
    Stereo({centre}).mix(std::vector<float>{0.5F, -1}, out);
    CHECK(out == std::vector<float>{0.5F, 0.5F, -1, -1});
    out.clear();
    Stereo({left, right}).mix(std::vector<float>{0.25F, 0.75F}, out);
    CHECK(out == std::vector<float>{0.25F, 0.75F});
    const Stereo six({left, right, centre, low_frequency, surround_left, surround_right});
    const auto mixed = [&](std::vector<float> in) {
        std::vector<float> frame;
        six.mix(in, frame);
        return frame;
    };
    // BS.775-3: 1, 0.7071, 0.7071; turned down by their sum, 2.4142.
    CHECK(mixed({1, 0, 0, 0, 0, 0})[0] == Approx(1 / 2.4142).epsilon(1e-3));
    CHECK(mixed({1, 0, 0, 0, 0, 0})[1] == 0);
    CHECK(mixed({0, 0, 1, 0, 0, 0})[0] == Approx(0.7071 / 2.4142).epsilon(1e-3));
    CHECK(mixed({0, 0, 1, 0, 0, 0})[1] == Approx(0.7071 / 2.4142).epsilon(1e-3));
    CHECK(mixed({0, 0, 0, 1, 0, 0}) == std::vector<float>{0, 0});
    CHECK(mixed({1, 1, 1, 1, 1, 1})[1] == Approx(1).epsilon(1e-5));
}
