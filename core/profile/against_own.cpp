#include "profile/against_own.h"

#include "profile/statistics.h"

#include <cmath>
#include <map>

namespace luft::profile {
namespace {

constexpr std::size_t kLeastForLine = 12;
constexpr std::size_t kLeastOfVowel = 3;

} // namespace

std::vector<std::optional<double>> levelled(const std::vector<SungNote>& notes, const ColourOf& colour) {
    std::vector<double> x, y;
    for (const auto& n : notes)
        if (const auto v = colour(n)) x.push_back(n.note->level.value()), y.push_back(*v);
    const auto line = y.size() >= kLeastForLine ? fit_line(x, y) : std::nullopt;
    const double middle = median(y).value_or(0);
    std::vector<std::optional<double>> out;
    for (const auto& n : notes) {
        auto v = colour(n);
        if (v) *v -= line ? line->at(n.note->level.value()) : middle;
        out.push_back(v);
    }
    return out;
}

std::vector<std::optional<double>> for_its_vowel(const std::vector<SungNote>& notes, const ColourOf& colour) {
    const auto vowel = [](const SungNote& n) {
        return n.note->vowel ? n.note->vowel->nearest : std::string();
    };
    std::map<std::string, std::vector<double>> by_vowel;
    for (const auto& n : notes)
        if (const auto v = colour(n); v && *v > 0 && !vowel(n).empty()) by_vowel[vowel(n)].push_back(*v);
    std::map<std::string, double> middle;
    for (const auto& [name, values] : by_vowel)
        if (values.size() >= kLeastOfVowel) middle[name] = *median(values);
    std::vector<std::optional<double>> out;
    for (const auto& n : notes) {
        const auto v = colour(n);
        const auto like = middle.find(vowel(n));
        if (!v || !(*v > 0) || like == middle.end())
            out.emplace_back();
        else
            out.emplace_back(std::log(*v / like->second));
    }
    return out;
}

} // namespace luft::profile
