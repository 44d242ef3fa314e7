#include "profile/phrase_shapes.h"

#include "base/text.h"
#include "marks/phrase_levels.h"
#include "profile/words.h"

#include <array>
#include <cmath>

namespace luft::profile {
namespace {

constexpr std::array<const char*, 6> kSigns{"pp", "p", "mp", "mf", "f", "ff"};

std::vector<marks::Note> copies(const Material& m) {
    std::vector<marks::Note> notes;
    for (const auto& n : m.notes)
        notes.push_back(*n.note);
    return notes;
}

} // namespace

const char* shade_of(marks::LevelShape shape) {
    using enum marks::LevelShape;
    switch (shape) {
    case growing:
        return "crescendo";
    case fading:
        return "decrescendo";
    case swelling:
        return "swell";
    case fluctuating:
        return "fluctuating";
    case steady:
        break;
    }
    return "steady";
}

std::vector<std::optional<marks::PhraseLevel>> phrase_shapes(const Material& m) {
    std::vector<marks::Phrase> drawn;
    for (const auto* p : m.phrases)
        if (!p->level) drawn.push_back(*p);
    marks::measure_phrase_levels(drawn, copies(m), m.source.curves.level,
                                 m.accompanied ? voice::Setting::accompanied : voice::Setting::alone);
    std::vector<std::optional<marks::PhraseLevel>> out;
    std::size_t next = 0;
    for (const auto* p : m.phrases)
        out.push_back(p->level ? p->level : drawn[next++].level);
    return out;
}

std::string shape_words(const marks::PhraseLevel& level) {
    const auto decibels = [](Decibels d) { return fixed(std::abs(d.value()), 0) + " dB"; };
    const std::string peak =
        level.peak_at ? ", highest at " + percent(*level.peak_at) + " of its length" : "";
    using enum marks::LevelShape;
    switch (level.shape) {
    case growing:
        return "it grows by " + decibels(level.change);
    case fading:
        return "it fades by " + decibels(level.change);
    case swelling:
        return "it swells by " + decibels(level.rise) + " and falls again" + peak;
    case fluctuating:
        return "its notes go up and down without a plan";
    case steady:
        break;
    }
    return "it keeps its level";
}

std::string marked_words(const Material& m) {
    std::array<int, 6> counts{};
    int all = 0;
    for (const auto& n : m.notes)
        if (n.note->dynamic) ++counts[static_cast<std::size_t>(*n.note->dynamic)], ++all;
    if (all == 0) return {};
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < counts.size(); ++i)
        if (counts[i] > 0) parts.push_back(std::string(kSigns[i]) + " " + std::to_string(counts[i]));
    if (parts.size() == 1)
        return "The voice stays within so few decibels that all notes are marked alike, " +
               parts.front().substr(0, parts.front().find(' ')) + ".";
    return "Against this singer's own range in this recording the notes are marked " + listed(parts) +
           "; that says nothing of how loud it was in the room.";
}

} // namespace luft::profile
