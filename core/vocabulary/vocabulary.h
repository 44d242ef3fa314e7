// The tag vocabulary as data: facets (axes of technique), their shades (values), and the drills that train
// them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace luft::vocabulary {

/// On what a judgement on this facet rests.
enum class Basis {
    measured, ///< the program measures it and proposes shades
    hint,     ///< the program measures something that only hints at it, and words it so
    coach,    ///< sound doesn't show it: the coach's judgement only
};

/// How a shade usually counts; the coach decides in each case.
enum class Leaning { strength, watch, neutral };

struct Shade {
    std::string key;         ///< lower-case ASCII with dashes, unique in its facet: "glottal"
    std::string name;        ///< as a teacher says it: "glottal (hard)"
    std::string description; ///< one sentence: what is heard
    Leaning leaning = Leaning::neutral;
};

struct Facet {
    std::string key;         ///< unique: "onset"
    std::string name;        ///< "Onset"
    std::string description; ///< one sentence
    Basis basis = Basis::measured;
    std::vector<Shade> shades;
    bool own = false; ///< added by the coach
};

/// A shade of a facet, by keys. Text form "onset:glottal".
struct Tag {
    std::string facet;
    std::string shade;
    auto operator<=>(const Tag&) const = default;
};

struct Drill {
    std::string key; ///< unique: "hiss-then-tone"
    std::string title;
    std::string aim;                ///< one sentence: what it trains
    std::vector<std::string> steps; ///< in order, each a sentence
    std::string caution;            ///< when to stop; may be empty
    std::vector<Tag> trains;        ///< shades it answers; an empty shade stands for the whole facet
    bool own = false;
};

struct Vocabulary {
    std::vector<Facet> facets; ///< in the order in which a profile goes through them
    std::vector<Drill> drills;

    [[nodiscard]] const Facet* facet(std::string_view key) const;
    [[nodiscard]] const Shade* shade(const Tag& tag) const;
    [[nodiscard]] const Drill* drill(std::string_view key) const;
    /// Drills that answer a shade, those made for exactly it first.
    [[nodiscard]] std::vector<const Drill*> drills_for(const Tag& tag) const;
};

/// Reads "facet:shade". Throws Error(bad_request) when it isn't of that form.
Tag parse_tag(std::string_view text);
std::string tag_text(const Tag& tag);

/// True for a key as described above: 1 to 40 of a-z, 0-9 and '-', starting with a letter.
bool is_key(std::string_view text);

/// What a new project starts with: fifteen facets and the drill book (in defaults_*.cpp).
Vocabulary default_vocabulary();

} // namespace luft::vocabulary
