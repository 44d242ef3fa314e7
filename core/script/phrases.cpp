#include "script/phrases.h"

#include "base/text.h"

#include <array>
#include <cctype>

namespace luft::script {
namespace {

struct Row {
    const char* facet;
    const char* shade;
    const char* article;
    const char* name;
    const char* clause;
};

// One row a shade of the default vocabulary.
constexpr std::array kRows = {
    Row{"onset", "glottal", "a", "hard onset", "the tone starts hard, with a small click"},
    Row{"onset", "breathy", "a", "breathy onset", "a little air comes before the tone"},
    Row{"onset", "balanced", "a", "balanced onset",
        "the tone is there at once, without click and without air"},
    Row{"offset", "clean", "a", "clean release", "the note ends on time and at full quality"},
    Row{"offset", "breathy", "a", "breathy release", "the note ends in a puff of air"},
    Row{"offset", "trailing", "a", "release that trails off", "the note sags before its time is up"},
    Row{"vowel-shape", "tall", "a", "tall vowel", "the vowel has height and room"},
    Row{"vowel-shape", "spread", "a", "spread vowel", "the vowel is pulled wide, as in a smile"},
    Row{"vowel-shape", "rounded", "a", "rounded vowel", "the lips round the vowel off"},
    Row{"vowel-shape", "narrow", "a", "narrow vowel", "the vowel is slim and focused"},
    Row{"vowel-shape", "neutral", "a", "neutral vowel", "the vowel leans toward a plain “uh”"},
    Row{"vowel-shape", "migrating", "a", "vowel that migrates",
        "the vowel turns into another one while the note is held"},
    Row{"larynx", "low", "a", "low larynx", "the larynx sits low and gives the tone a lot of room"},
    Row{"larynx", "neutral", "a", "larynx at rest", "the larynx sits where it does in easy speech"},
    Row{"larynx", "high", "a", "high larynx", "the larynx sits high and makes the space small"},
    Row{"larynx", "rising", "a", "rising larynx", "the larynx climbs along with the line"},
    Row{"dynamics", "soft", "", "soft singing", "the voice stays well below its usual level"},
    Row{"dynamics", "moderate", "a", "moderate level", "the voice stays near its usual level"},
    Row{"dynamics", "loud", "", "loud singing", "the voice stays well above its usual level"},
    Row{"dynamics", "crescendo", "a", "crescendo", "the voice grows"},
    Row{"dynamics", "decrescendo", "a", "decrescendo", "the voice draws back"},
    Row{"dynamics", "swell", "a", "swell", "the voice grows and fades again"},
    Row{"dynamics", "steady", "a", "steady level", "the level holds from start to end"},
    Row{"dynamics", "fluctuating", "a", "wavering level", "the level wavers without a plan"},
    Row{"register", "chest", "", "chest register",
        "the voice is in chest register, full and close to speech"},
    Row{"register", "head", "", "head register", "the voice is in head register, light and flute-like"},
    Row{"register", "mix", "a", "mix of the registers",
        "chest and head register are blended, and neither takes over"},
    Row{"register", "switch-smooth", "a", "smooth register switch",
        "the register changes so smoothly that you have to listen for it"},
    Row{"register", "switch-break", "a", "register break", "the register changes with an audible break"},
    Row{"closure", "firm", "", "firm closure", "the folds meet firmly and give the tone a solid core"},
    Row{"closure", "balanced", "", "balanced closure", "the folds meet without effort and the tone is clear"},
    Row{"closure", "breathy", "", "breathy closure",
        "the folds leave a gap, and air runs along with the tone"},
    Row{"closure", "pressed", "", "pressed closure", "the folds press and the tone holds its air back"},
    Row{"resonance", "ringing", "a", "ringing tone", "a bright ring carries the tone"},
    Row{"resonance", "plain", "a", "plain tone", "the tone is clear but doesn't ring much"},
    Row{"resonance", "bright", "a", "bright tone", "the upper part of the sound stands out"},
    Row{"resonance", "dark", "a", "dark tone", "the lower part of the sound stands out"},
    Row{"resonance", "nasal", "a", "nasal tone", "the vowel goes through the nose"},
    Row{"breath", "audible", "an", "audible breath", "the breath itself can be heard"},
    Row{"breath", "silent", "a", "silent breath", "the breath is taken without a sound"},
    Row{"breath", "quick", "a", "quick breath",
        "the breath is a short catch of air that doesn't hold up the line"},
    Row{"breath", "full", "a", "full breath", "the breath takes its time"},
    Row{"breath", "well-placed", "a", "well-placed breath", "the breath falls where the line pauses anyway"},
    Row{"breath", "mid-phrase", "a", "breath in mid-phrase", "the breath cuts the line in two"},
    Row{"intonation", "centred", "", "centred pitch", "the pitch sits in the middle of the note"},
    Row{"intonation", "sharp", "a", "note on the sharp side", "the pitch sits above the note"},
    Row{"intonation", "flat", "a", "note on the flat side", "the pitch sits below the note"},
    Row{"intonation", "drifting", "a", "drifting pitch", "the pitch wanders off while the note is held"},
    Row{"intonation", "scooped", "a", "scoop into the note", "the pitch slides up into the note from below"},
    Row{"vibrato", "straight", "a", "straight tone", "the tone is held straight, without vibrato"},
    Row{"vibrato", "even", "an", "even vibrato", "the vibrato swings evenly"},
    Row{"vibrato", "uneven", "an", "uneven vibrato", "the vibrato keeps changing its speed or its width"},
    Row{"vibrato", "wide", "a", "wide vibrato", "the vibrato swings so wide that the note loses its centre"},
    Row{"vibrato", "narrow", "a", "narrow vibrato", "the vibrato is small, a shimmer on the tone"},
    Row{"vibrato", "fast", "a", "fast vibrato", "the vibrato is quick, near a flutter"},
    Row{"vibrato", "slow", "a", "slow vibrato", "the vibrato is slow, near a wobble"},
    Row{"vibrato", "late", "a", "late vibrato", "the tone starts straight and begins to swing later"},
    Row{"phrasing", "long-line", "a", "long line", "the phrase is carried far on one breath"},
    Row{"phrasing", "even", "an", "even line", "tone and level keep going to the last note of the line"},
    Row{"phrasing", "broken", "a", "broken line", "the line falls apart into pieces"},
    Row{"phrasing", "joined", "a", "pair of joined phrases",
        "two phrases are sung as one, without a breath between"},
    Row{"diction", "clear", "", "clear words", "every word can be understood"},
    Row{"diction", "swallowed", "", "swallowed words", "words or their endings get lost"},
    Row{"diction", "hard-consonants", "", "hard consonants", "the consonants hit hard and mark the rhythm"},
    Row{"diction", "soft-consonants", "", "soft consonants",
        "the consonants are light and leave the line alone"},
    Row{"posture", "aligned", "an", "aligned stance", "head, ribs and hips stand above each other"},
    Row{"posture", "at-ease", "", "ease in neck and shoulders", "neck, jaw and shoulders move freely"},
    Row{"posture", "chin-raised", "a", "raised chin", "the chin goes up"},
    Row{"posture", "shoulders-raised", "", "raised shoulders", "the shoulders lift with the breath"},
    Row{"posture", "collapsed", "a", "sinking breastbone", "the breastbone sinks as the phrase goes on"},
    Row{"embellishment", "plain", "a", "line sung as written", "the notes are sung as they stand"},
    Row{"embellishment", "turn", "a", "turn", "the note is circled by its neighbours"},
    Row{"embellishment", "run", "a", "run", "a quick string of notes runs through one syllable"},
    Row{"embellishment", "slide", "a", "slide", "the pitch glides from one note to the next"},
    Row{"embellishment", "grace-note", "a", "grace note", "a short note is touched before the main one"},
};

const Row* row(const vocabulary::Tag& tag) {
    for (const Row& r : kRows)
        if (tag.facet == r.facet && tag.shade == r.shade) return &r;
    return nullptr;
}

std::string lower_first(std::string text) {
    if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
    return text;
}

} // namespace

Noun noun(const vocabulary::Vocabulary& vocabulary, const vocabulary::Tag& tag) {
    if (const Row* r = row(tag)) return {r->article, r->name};
    const auto* facet = vocabulary.facet(tag.facet);
    const auto* shade = vocabulary.shade(tag);
    const std::string facet_name = facet ? facet->name : tag.facet;
    const std::string shade_name = shade ? shade->name : tag.shade;
    return {"", shade_name + " " + lower_first(facet_name)};
}

std::optional<std::string> clause(const vocabulary::Tag& tag) {
    if (const Row* r = row(tag)) return r->clause;
    return std::nullopt;
}

} // namespace luft::script
