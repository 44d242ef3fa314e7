#include "profile/words.h"

#include "base/text.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {

std::string listed(const std::vector<std::string>& parts) {
    std::string out;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) out += i + 1 == parts.size() ? " and " : ", ";
        out += parts[i];
    }
    return out;
}

std::string counted(int n, const std::string& one, const std::string& many) {
    return std::to_string(n) + " " + (n == 1 ? one : many.empty() ? one + "s" : many);
}

std::string percent(double share) {
    const long whole = std::lround(share * 100);
    if (whole <= 0 && share > 0) return "under 1 %";
    if (whole >= 100 && share < 1) return "over 99 %";
    return std::to_string(whole) + " %";
}

std::string length_text(Seconds t) {
    if (t.value() < 59.95) return fixed(t.value(), 1) + " s";
    const long whole = std::lround(t.value());
    std::string out = std::to_string(whole / 60) + " min";
    if (whole % 60 != 0) out += " " + std::to_string(whole % 60) + " s";
    return out;
}

std::string times(const std::vector<Span>& spans, std::size_t most) {
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < std::min(most, spans.size()); ++i)
        parts.push_back(clock_text(spans[i].start));
    if (spans.size() > most) parts.push_back(std::to_string(spans.size() - most) + " more");
    return listed(parts);
}

std::string off_pitch(Cents cents) {
    const long whole = std::lround(std::abs(cents.value()));
    if (whole == 0) return "dead on pitch";
    return counted(static_cast<int>(whole), "cent") + (cents.value() > 0 ? " sharp" : " flat");
}

std::string capital(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

std::string figure_text(const Measure& measure, double value) {
    return measure.unit == "MIDI" ? note_name(MidiPitch(value)) : fixed(value, measure.digits);
}

} // namespace luft::profile
