#include "vocabulary/vocabulary.h"

#include "base/error.h"
#include "vocabulary/defaults.h"

#include <algorithm>

namespace luft::vocabulary {
namespace {

template <class T>
const T* with_key(const std::vector<T>& all, std::string_view key) {
    const auto found = std::ranges::find(all, key, &T::key);
    return found == all.end() ? nullptr : &*found;
}

} // namespace

const Facet* Vocabulary::facet(std::string_view key) const {
    return with_key(facets, key);
}

const Shade* Vocabulary::shade(const Tag& tag) const {
    const Facet* of = facet(tag.facet);
    return of ? with_key(of->shades, tag.shade) : nullptr;
}

const Drill* Vocabulary::drill(std::string_view key) const {
    return with_key(drills, key);
}

std::vector<const Drill*> Vocabulary::drills_for(const Tag& tag) const {
    std::vector<const Drill*> found;
    for (const Tag& wanted : {tag, Tag{tag.facet, {}}})
        for (const Drill& drill : drills)
            if (std::ranges::find(drill.trains, wanted) != drill.trains.end() &&
                std::ranges::find(found, &drill) == found.end())
                found.push_back(&drill);
    return found;
}

bool is_key(std::string_view text) {
    constexpr std::size_t kLongest = 40;
    const auto letter = [](char c) { return c >= 'a' && c <= 'z'; };
    const auto allowed = [&](char c) { return letter(c) || (c >= '0' && c <= '9') || c == '-'; };
    return !text.empty() && text.size() <= kLongest && letter(text.front()) &&
           std::ranges::all_of(text, allowed);
}

Tag parse_tag(std::string_view text) {
    const auto colon = text.find(':');
    if (colon != std::string_view::npos) {
        Tag tag{std::string(text.substr(0, colon)), std::string(text.substr(colon + 1))};
        if (is_key(tag.facet) && is_key(tag.shade)) return tag;
    }
    throw Error(Fault::bad_request, "'" + std::string(text) + "' is not a shade.",
                "Write facet and shade with a colon between them, as in onset:breathy.");
}

std::string tag_text(const Tag& tag) {
    return tag.facet + ":" + tag.shade;
}

Vocabulary default_vocabulary() {
    Vocabulary all{default_facets(), breath_drills()};
    for (const auto& part : {tone_drills(), song_drills()})
        all.drills.insert(all.drills.end(), part.begin(), part.end());
    return all;
}

} // namespace luft::vocabulary
