// A source put in order: which marks count, and where each note lies in range, song and phrase.
#pragma once

#include "profile/profile.h"

#include <optional>
#include <vector>

namespace luft::profile {

/// Medians of the curves over the steady part of a note; none where a curve has nothing there.
struct Colour {
    std::optional<double> cpp, hnr, h1h2, ring, alpha, centroid, f1, f2, f3;
};

/// A note that counts.
struct SungNote {
    const marks::Note* note = nullptr;
    MidiPitch written; ///< pitch at the performance's own tuning
    int third = 1;     ///< 0 low, 1 middle, 2 high
    int quarter = 0;   ///< 0 to 3
    int phrase = -1;   ///< index among the phrases that count; -1 outside all of them
    bool last_of_phrase = false;
    bool joined_before = false; ///< follows the note before it without a gap
    bool joined_after = false;
    Colour colour;

    [[nodiscard]] Span span() const { return note->span; }
    [[nodiscard]] Seconds length() const { return note->span.length(); }
};

/// Notes nearer than this are joined (no source; a little longer than a voiced consonant's dip).
inline constexpr Seconds kJoined{0.06};

/// Points into its source, which has to outlive it.
struct Material {
    explicit Material(const Source& from);

    const Source& source;
    std::vector<SungNote> notes;
    std::vector<const marks::Breath*> breaths;
    std::vector<const marks::Phrase*> phrases;
    std::vector<const marks::Switch*> switches;
    std::optional<SungRange> range;
    std::array<Seconds, 5> quarters{};
    Seconds sung;
    Seconds duration;
    int left_out = 0;
    bool accompanied = false;

    [[nodiscard]] int quarter_of(Seconds t) const;
    [[nodiscard]] int third_of(MidiPitch written) const;
    /// The third in which most of the span is sung; of the nearest note where nothing is sung in it.
    [[nodiscard]] int third_at(Span span) const;
    /// The note sung at `t`, or the nearest one; null without notes.
    [[nodiscard]] const SungNote* note_near(Seconds t) const;
    /// "A4": the note's name on the page.
    [[nodiscard]] static std::string name(const SungNote& note);
};

} // namespace luft::profile
