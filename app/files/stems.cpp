#include "files/stems.h"

#include <algorithm>

namespace luft::files {
namespace {

std::string folded(std::string name) {
    std::ranges::transform(name, name.begin(),
                           [](char c) { return c >= 'A' && c <= 'Z' ? char(c + 32) : c; });
    return name;
}

} // namespace

std::string Stems::take(const std::string& plain) {
    std::string stem = plain;
    for (int i = 2; !taken_.insert(folded(stem)).second; ++i)
        stem = plain + "-" + std::to_string(i);
    return stem;
}

} // namespace luft::files
