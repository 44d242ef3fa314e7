// The curves' names in the project file, and how their numbers lie in a column.
#pragma once

#include "voice/curves.h"

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

namespace luft::project {

/// Calls `visit(name, curve)` for every curve. The only list of them in this folder.
template <class Curves, class Visit>
void for_each_curve(Curves& c, Visit visit) {
    visit("f0_hz", c.f0);
    visit("voicing", c.voicing);
    visit("loudness_lufs", c.loudness);
    visit("level_db", c.level);
    visit("cpp_db", c.cpp);
    visit("hnr_db", c.hnr);
    visit("h1h2_db", c.h1h2);
    visit("ring_db", c.ring);
    visit("alpha_db", c.alpha);
    visit("centroid_hz", c.centroid);
    visit("f1_hz", c.f1);
    visit("f2_hz", c.f2);
    visit("f3_hz", c.f3);
    visit("head_register", c.head_register);
}

/// IEEE 754 single precision, little endian, NaN for none; four bytes a frame.
std::vector<std::byte> to_column(std::span<const float> values);
std::vector<float> from_column(std::span<const std::byte> bytes);

} // namespace luft::project
