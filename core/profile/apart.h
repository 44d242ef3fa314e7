// Whether figures of two performances are further apart than chance would put them.
#pragma once

namespace luft::profile {

/// Values of one measure: their median, 10th and 90th percentile, and how many they are.
struct Summed {
    double median = 0, low = 0, high = 0;
    int count = 0;
};

/// Whether each median lies outside the other's middle 80 %, and three standard errors away; see beside.h.
bool apart(const Summed& x, const Summed& y);

/// Two-sided probability by Fisher's exact test that shares `x` of `of_x` and `y` of `of_y` or less likely
/// ones come from one and the same share. 1 where there is nothing to count.
double fisher(int x, int of_x, int y, int of_y);

} // namespace luft::profile
