// How shades are spoken of.
#pragma once

#include "vocabulary/vocabulary.h"

#include <optional>
#include <string>

namespace luft::script {

/// A shade as a thing: "breathy onset", with the article it takes ("a", "an" or none).
struct Noun {
    std::string article;
    std::string name;

    [[nodiscard]] std::string with_article() const { return article.empty() ? name : article + " " + name; }
};

/// For the shades of the default vocabulary as a teacher says it; for others "NAME FACET", without article.
Noun noun(const vocabulary::Vocabulary& vocabulary, const vocabulary::Tag& tag);

/// A shade as a clause that can stand after "you can hear that": "a little air comes before the tone". None
/// for shades that the coach added.
std::optional<std::string> clause(const vocabulary::Tag& tag);

} // namespace luft::script
