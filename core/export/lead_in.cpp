#include "export/lead_in.h"

#include <vector>

namespace luft::exports {

std::string lead_in(const script::Source& source, Seconds t) {
    std::vector<std::string> words;
    bool joins = false; // the last syllable goes on in the next one
    for (const auto& syllable : source.sung_words) {
        if (syllable.at >= t) break;
        if (joins)
            words.back() += syllable.text;
        else
            words.push_back(syllable.text);
        joins = syllable.joins;
    }
    std::string out;
    const std::size_t from = words.size() > kLeadInWords ? words.size() - kLeadInWords : 0;
    for (std::size_t i = from; i < words.size(); ++i)
        out += (out.empty() ? "" : " ") + words[i];
    return joins ? out + "-" : out;
}

} // namespace luft::exports
