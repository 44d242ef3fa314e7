#include "desk/work/shades.h"

#include <algorithm>
#include <cctype>
#include <sstream>

namespace luft::desk {
namespace {

std::string lowered(std::string_view text) {
    std::string out(text);
    std::ranges::transform(out, out.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return out;
}

std::vector<std::string> words_of(std::string_view text) {
    std::istringstream stream{lowered(text)};
    std::vector<std::string> out;
    for (std::string word; stream >> word;)
        out.push_back(word);
    return out;
}

/// 0 best: a word of the shade begins so; 1: of the facet; 2: somewhere inside; 3: not at all.
int fit(const std::vector<std::string>& typed, const vocabulary::Facet& facet,
        const vocabulary::Shade& shade) {
    const std::string all = lowered(facet.name + " " + shade.name + " " + shade.key);
    for (const auto& word : typed)
        if (all.find(word) == std::string::npos) return 3;
    if (typed.empty()) return 0;
    const auto begins = [&](const std::string& text) {
        return std::ranges::any_of(words_of(text),
                                   [&](const auto& w) { return w.starts_with(typed.front()); });
    };
    return begins(shade.name) ? 0 : begins(facet.name) ? 1 : 2;
}

} // namespace

std::vector<ShadeOffer> find_shades(const vocabulary::Vocabulary& vocabulary, std::string_view typed,
                                    const std::vector<vocabulary::Tag>& recent) {
    struct Candidate {
        ShadeOffer offer;
        std::pair<int, long> rank;
    };
    const auto words = words_of(typed);
    std::vector<Candidate> found;
    for (const auto& facet : vocabulary.facets)
        for (const auto& shade : facet.shades) {
            const int rank = fit(words, facet, shade);
            if (rank == 3) continue;
            const vocabulary::Tag tag{facet.key, shade.key};
            const auto used = std::ranges::find(recent, tag);
            found.push_back({{tag, facet.name + ": " + shade.name, shade.description},
                             {rank, used == recent.end() ? 1'000'000 : used - recent.begin()}});
        }
    std::ranges::stable_sort(found, {}, &Candidate::rank);
    std::vector<ShadeOffer> out;
    for (auto& candidate : found)
        out.push_back(std::move(candidate.offer));
    return out;
}

} // namespace luft::desk
