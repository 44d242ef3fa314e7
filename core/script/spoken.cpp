#include "script/spoken.h"

#include <array>
#include <cctype>
#include <cmath>

namespace luft::script {
namespace {

struct Step {
    double below;
    const char* words;
};

template <std::size_t N>
std::string in_steps(double value, const std::array<Step, N>& steps, const std::string& beyond) {
    for (const Step& s : steps)
        if (value < s.below) return s.words;
    return beyond;
}

} // namespace

std::string spoken_number(int n) {
    static constexpr std::array kWords = {
        "no",       "one",     "two",     "three",     "four",     "five",     "six",
        "seven",    "eight",   "nine",    "ten",       "eleven",   "twelve",   "thirteen",
        "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"};
    return n >= 0 && n < static_cast<int>(kWords.size()) ? kWords[static_cast<std::size_t>(n)]
                                                         : std::to_string(n);
}

std::string spoken_length(Seconds length) {
    static constexpr std::array kSteps = {
        Step{0.18, "less than a fifth of a second"},    Step{0.29, "about a quarter of a second"},
        Step{0.41, "about a third of a second"},        Step{0.62, "about half a second"},
        Step{0.87, "about three quarters of a second"}, Step{1.25, "about a second"},
        Step{1.75, "about a second and a half"}};
    return in_steps(length.value(), kSteps,
                    "about " + spoken_number(static_cast<int>(std::lround(length.value()))) + " seconds");
}

std::string spoken_interval(Cents interval) {
    static constexpr std::array kSteps = {Step{8, "hardly more than nothing"},
                                          Step{15, "about a tenth of a semitone"},
                                          Step{22, "about a fifth of a semitone"},
                                          Step{29, "about a quarter of a semitone"},
                                          Step{41, "about a third of a semitone"},
                                          Step{59, "about half a semitone"},
                                          Step{71, "about two thirds of a semitone"},
                                          Step{87, "about three quarters of a semitone"},
                                          Step{125, "about a semitone"},
                                          Step{175, "about a semitone and a half"},
                                          Step{250, "about a whole tone"}};
    return in_steps(std::abs(interval.value()), kSteps,
                    "about " +
                        spoken_number(static_cast<int>(std::lround(std::abs(interval.value()) / 100))) +
                        " semitones");
}

std::string listed(const std::vector<std::string>& parts) {
    std::string out;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) out += i + 1 == parts.size() ? " and " : ", ";
        out += parts[i];
    }
    return out;
}

std::string sentence(std::string text) {
    while (!text.empty() && std::isspace(static_cast<unsigned char>(text.back())))
        text.pop_back();
    if (text.empty()) return text;
    text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    const bool ended = text.ends_with("…") || text.ends_with("”") ||
                       std::string_view(".!?\"'").find(text.back()) != std::string_view::npos;
    return ended ? text : text + ".";
}

} // namespace luft::script
