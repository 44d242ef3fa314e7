#include "export/drill_places.h"

#include "base/text.h"
#include "profile/words.h"

namespace luft::exports {
namespace {

/// More places than this for one drill aren't looked up by anybody; no source.
constexpr std::size_t kMostPlaces = 3;

} // namespace

std::string_view handout_lead() {
    return "Sing at ease, a few minutes at a time. Nothing here may hurt or make you hoarse: then stop, and "
           "try "
           "it another day with your teacher. Hoarseness that lasts more than three weeks belongs to a "
           "doctor, "
           "and so does pain or a voice that stays away.";
}

std::vector<std::string> handout_facts(const profile::Profile& profile) {
    std::vector<std::string> facts;
    if (!profile.source.empty()) facts.push_back(profile.source);
    if (profile.duration > Seconds(0)) facts.push_back(profile::length_text(profile.duration));
    return facts;
}

std::vector<profile::Example> drill_places(const profile::Profile& profile, const std::string& drill) {
    std::vector<profile::Example> places;
    for (const auto& finding : profile.practise)
        if (finding.drill == drill)
            for (const auto& example : finding.examples)
                if (places.size() < kMostPlaces) places.push_back(example);
    return places;
}

std::string place_time(const profile::Example& place) {
    return clock_text(place.span.start) + " to " + clock_text(place.span.end);
}

} // namespace luft::exports
