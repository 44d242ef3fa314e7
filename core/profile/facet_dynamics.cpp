// How loud the voice is, and how its level moves.
#include "base/text.h"
#include "profile/facets.h"
#include "profile/phrase_shapes.h"
#include "profile/statistics.h"
#include "profile/thresholds.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

/// Span between the 10th and the 90th percentile of note levels that is called a wide or a narrow one (no
/// source; recordings of songs are often compressed).
constexpr double kWideSpan = 12;
constexpr double kNarrowSpan = 5;
constexpr int kLeastNotes = 5;

std::string described(const SungNote& n, const char* shape) {
    const double change = n.note->level_change.value();
    return Material::name(n) + " of " + length_text(n.length()) + ", " + shape +
           (std::abs(change) >= 1
                ? " (" + fixed(std::abs(change), 0) + " dB " + (change > 0 ? "up" : "down") + ")"
                : "");
}

void tally(const Material& m, double usual, Draft& d) {
    Seconds held_time;
    int held = 0;
    for (const auto& n : m.notes)
        if (n.length() >= kHeldNote) ++held, held_time += n.length();
    d.tally.open("level", ShareBy::time, "note", "of singing", static_cast<int>(m.notes.size()), m.sung,
                 {"soft", "moderate", "loud"});
    d.tally.open("shape of held notes", ShareBy::count, "held note", "held notes", held, held_time,
                 {"steady", "crescendo", "decrescendo", "swell", "fluctuating"});
    for (const auto& n : m.notes) {
        const double over = n.note->level.value() - usual;
        const char* level = over > kLouder.value() ? "loud" : over < -kLouder.value() ? "soft" : "moderate";
        d.tally.add("level", level, n, over == 0 ? 0 : std::abs(over),
                    Material::name(n) + " lies " + fixed(std::abs(over), 0) + " dB " +
                        (over < 0 ? "under" : "over") + " the singer's usual level here");
        if (n.length() < kHeldNote) continue;
        const char* shape = shade_of(n.note->shape);
        d.tally.add("shape of held notes", shape, n,
                    n.length().value() + std::abs(n.note->level_change.value()) / 6, described(n, shape));
    }
}

/// A shape less sure than this isn't counted among the phrases that show it (no source).
constexpr Confidence kLeastSure{0.6};
constexpr int kLeastPhrases = 4;

void phrases(const Material& m, Draft& d) {
    const auto shapes = phrase_shapes(m);
    int told = 0, shaped = 0;
    Seconds time;
    for (std::size_t i = 0; i < shapes.size(); ++i)
        if (shapes[i]) ++told, time += m.phrases[i]->span.length();
    if (told == 0) return;
    const std::string axis = "shape of phrases";
    d.tally.open(axis, ShareBy::count, "phrase", "phrases", told, time,
                 {"steady", "crescendo", "decrescendo", "swell", "fluctuating"});
    Values change;
    std::vector<Span> where;
    std::optional<Example> clearest;
    double most = 0;
    int unsure = 0, level_kept = 0;
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        if (!shapes[i]) continue;
        const Span span = m.phrases[i]->span;
        const marks::PhraseLevel& level = *shapes[i];
        change.add(level.change.value(), m.third_at(span), m.quarter_of(span.middle()));
        if (level.confidence < kLeastSure) {
            ++unsure;
            continue;
        }
        const double size = std::max(std::abs(level.change.value()), level.rise.value());
        const std::string words = "phrase of " + length_text(span.length()) + ", " + shape_words(level);
        d.tally.add(axis, shade_of(level.shape), span, level.confidence.value + size / 20, words);
        using enum marks::LevelShape;
        level_kept += level.shape == marks::LevelShape::steady ? 1 : 0;
        if (level.shape != growing && level.shape != fading && level.shape != swelling) continue;
        ++shaped;
        where.push_back(span);
        if (size > most) most = size, clearest = Example{span, words};
    }
    add_measure(d.measures, "phrase_change_db", "Level over a phrase", "dB", 0, change,
                "End less start of the path through its notes; above 0 the phrase grows.");
    d.say("Of " + counted(told, "phrase") + " " + std::to_string(shaped) + " grow, fade or swell and " +
          std::to_string(level_kept) + " keep their level" +
          (unsure > 0 ? "; " + std::to_string(unsure) + " can't be told for sure" : "") +
          (m.accompanied ? "; soft notes under the band are missed, so that changes come out too small."
                         : "."));
    if (told >= kLeastPhrases && shaped * 2 >= told)
        d.find(FindingKind::strength, "", std::min(0.8, 0.4 + 0.4 * shaped / told),
               std::to_string(shaped) + " of " + counted(told, "phrase") + " are shaped in level (" +
                   times(where) + ").",
               clearest);
}

} // namespace

void dynamics(const Material& m, Draft& d) {
    if (m.notes.empty()) return;
    std::vector<double> levels;
    for (const auto& n : m.notes)
        levels.push_back(n.note->level.value());
    const double usual = median(levels).value_or(0);
    tally(m, usual, d);

    Values level, change;
    for (const auto& n : m.notes) {
        level.add(n.note->level.value() - usual, n);
        if (n.length() >= kHeldNote) change.add(n.note->level_change.value(), n);
    }
    add_measure(d.measures, "level_db", "Level of the notes", "dB", 0, level,
                "Against the median note of this recording, which is 0; not a level in the room.");
    add_measure(d.measures, "level_change_db", "Level over a held note", "dB", 0, change,
                "End less start; above 0 the note grows.");

    const double span = percentile(levels, 0.9).value_or(0) - percentile(levels, 0.1).value_or(0);
    if (levels.size() >= kLeastForMedian)
        d.say("Between its soft and its loud notes the voice spans " + fixed(span, 0) +
              " dB (middle 80 % of the notes)" +
              (m.accompanied ? "; accompaniment makes this less sure." : "."));
    if (const std::string marked = marked_words(m); !marked.empty()) d.say(marked);
    phrases(m, d);
    const auto low = level.in_third(0), high = level.in_third(2);
    if (low.size() >= kLeastForMedian && high.size() >= kLeastForMedian) {
        const double lift = *median(high) - *median(low);
        d.say("The high range is " + fixed(std::abs(lift), 0) + " dB " + (lift < 0 ? "softer" : "louder") +
              " than the low range.");
    }
    if (m.source.listening && m.source.listening->loudness.range)
        d.say("The recording as a whole has a loudness range of " +
              fixed(m.source.listening->loudness.range->value(), 1) + " LU.");

    d.good = d.tally.count("swell") > 0 ? "swell" : "steady";
    d.contrast = "fluctuating";
    const auto all = static_cast<int>(levels.size());
    if (all >= kLeastNotes && span >= kWideSpan)
        d.find(FindingKind::strength, "", std::min(1.0, span / 20),
               "The dynamic range is wide: " + fixed(span, 0) + " dB lie between soft and loud notes.",
               d.tally.best("soft"));
    if (all >= kLeastNotes && span <= kNarrowSpan)
        d.find(FindingKind::watch, "moderate", 0.3,
               "Most notes are equally loud (" + fixed(span, 0) +
                   " dB between soft and loud); it may be the singing, or the recording was levelled.",
               d.tally.best("moderate"));
    const int wavering = d.tally.count("fluctuating");
    if (wavering >= 3 && wavering >= 0.2 * static_cast<double>(change.size()))
        d.find(FindingKind::watch, "fluctuating",
               static_cast<double>(wavering) / static_cast<double>(change.size()),
               counted(wavering, "held note") + " of " + std::to_string(change.size()) + " waver in level (" +
                   times(d.tally.spans("fluctuating")) + ").",
               d.tally.best("fluctuating"));
    const int swells = d.tally.count("swell");
    if (swells >= 2)
        d.find(FindingKind::strength, "swell", 0.5 + 0.05 * std::min(swells, 10),
               counted(swells, "held note swells and fades", "held notes swell and fade") +
                   " again: the dynamics are shaped (" + times(d.tally.spans("swell")) + ").",
               d.tally.best("swell"));
}

} // namespace luft::profile
