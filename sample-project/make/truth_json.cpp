#include "make/truth_json.h"

#include "base/text.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace luft::sample {
namespace {

using nlohmann::ordered_json;
using namespace luft::singer;

double rounded(double x, int digits) {
    const double k = std::pow(10.0, digits);
    return std::round(x * k) / k + 0.0; // no negative zero
}
double seconds(Seconds t) {
    return rounded(t.value(), 3);
}
template <class U>
ordered_json curve(const Curve<U>& c, int digits) {
    ordered_json out = ordered_json::array();
    for (const float v : c.raw())
        out.push_back(std::isnan(v) ? ordered_json() : ordered_json(rounded(double(v), digits)));
    return out;
}
const char* word(marks::Register r) {
    return r == marks::Register::chest ? "chest" : "head";
}
ordered_json word(std::optional<marks::OnsetKind> k) {
    if (!k) return nullptr;
    constexpr const char* kWords[] = {"glottal", "breathy", "balanced"};
    return kWords[static_cast<int>(*k)];
}
ordered_json word(std::optional<marks::OffsetKind> k) {
    if (!k) return nullptr;
    constexpr const char* kWords[] = {"clean", "breathy", "trailing"};
    return kWords[static_cast<int>(*k)];
}
const char* word(marks::LevelShape s) {
    constexpr const char* kWords[] = {"steady", "crescendo", "decrescendo", "swell", "fluctuating"};
    return kWords[static_cast<int>(s)];
}
ordered_json word(Consonant c) {
    constexpr const char* kWords[] = {"", "h", "s", "f", "sh", "t", "k", "m", "n", "l"};
    if (c == Consonant::none) return nullptr;
    return kWords[static_cast<int>(c)];
}

ordered_json note_json(const TrueNote& n) {
    ordered_json vibrato;
    if (n.vibrato)
        vibrato = {{"rate_hz", n.vibrato->rate.value()},
                   {"extent_cents", n.vibrato->extent.value()},
                   {"delay_s", n.vibrato->delay.value()},
                   {"unrest", n.vibrato->unrest}};
    return {{"start_s", seconds(n.span.start)},
            {"end_s", seconds(n.span.end)},
            {"syllable", n.syllable},
            {"midi", rounded(n.pitch.value(), 3)},
            {"cents", n.off.value()},
            {"drift_cents", n.drift.value()},
            {"scoop_cents", n.scoop.value()},
            {"vibrato", vibrato},
            {"onset", word(n.onset)},
            {"offset", word(n.offset)},
            {"vowel",
             {{"sign", ipa(n.vowel)},
              {"f1_hz", n.formants[0].frequency.value()},
              {"f2_hz", n.formants[1].frequency.value()}}},
            {"register", word(n.sung_in)},
            {"level_db", rounded(n.level.value(), 1)},
            {"dynamics", word(n.path.shape)},
            {"change_db", n.path.change.value()},
            {"consonant", word(n.consonant)},
            {"phrase", n.phrase}};
}

} // namespace

std::string truth_json(const Performance& p, const Sound& sound) {
    const Truth& t = sound.truth;
    ordered_json out = {{"performer", p.performer},
                        {"tonic_midi", p.frame.tonic.value()},
                        {"beats_a_minute", rounded(60 / p.frame.beat.value(), 3)},
                        {"tuning_hz", t.tuning.value()},
                        {"voice_over_band_db", p.voice_over_band.value()},
                        {"hop_s", kHop.value()}};
    for (const char* list : {"breaths", "phrases", "switches", "consonants", "notes"})
        out[list] = ordered_json::array();
    for (std::size_t k = 0; k < t.breaths.size(); ++k) {
        const TrueBreath& b = t.breaths[k];
        out["breaths"].push_back(
            {{"start_s", seconds(b.span.start)},
             {"end_s", seconds(b.span.end)},
             {"silent", !b.heard},
             {"mid_phrase", b.inside_phrase},
             {"level_db", b.heard ? ordered_json(rounded(b.level.value(), 1)) : ordered_json()},
             {"band_level_db", rounded(sound.band_level[k].value(), 1)}});
    }
    for (const TruePhrase& f : t.phrases)
        out["phrases"].push_back(
            {{"start_s", seconds(f.span.start)}, {"end_s", seconds(f.span.end)}, {"words", f.words}});
    for (const TrueSwitch& s : t.switches)
        out["switches"].push_back({{"time_s", seconds(s.time)},
                                   {"from", word(s.from)},
                                   {"to", word(s.to)},
                                   {"joined", s.joined},
                                   {"broken", s.broken}});
    for (const TrueNoise& n : t.consonants)
        out["consonants"].push_back({{"start_s", seconds(n.span.start)},
                                     {"end_s", seconds(n.span.end)},
                                     {"sound", word(n.consonant)}});
    for (const TrueNote& n : t.notes)
        out["notes"].push_back(note_json(n));
    out["curves"] = {
        {"f0_hz", curve(t.f0, 1)}, {"level_db", curve(t.level, 1)}, {"head_register", curve(t.head, 2)}};
    // Lists on lines of their own, curves on one line each: readable, and small.
    std::string text = "{\n";
    bool first = true;
    for (const auto& [key, value] : out.items()) {
        if (!first) text += ",\n";
        first = false;
        text += "\"" + key + "\": ";
        if (value.is_array()) {
            text += "[\n";
            for (std::size_t k = 0; k < value.size(); ++k)
                text += "  " + value[k].dump() + (k + 1 < value.size() ? ",\n" : "\n");
            text += "]";
        } else {
            text += value.dump();
        }
    }
    return text + "\n}\n";
}

} // namespace luft::sample
