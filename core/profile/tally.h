// Counts how often, how long, where in the range and where in the song each shade of a facet occurs.
#pragma once

#include "profile/material.h"

#include <string>
#include <vector>

namespace luft::profile {

/// One occurrence of a shade.
struct Hit {
    Span span;
    int third = 1;
    int quarter = 0;
    double clarity = 0;     ///< the clearest becomes the example; any scale, the same for one shade
    std::string words;      ///< what is to be heard, for the example
    bool tagged = false;    ///< stands on the coach's tag alone
    bool confirmed = false; ///< detected, and tagged by the coach as well
};

enum class ShareBy { count, time };

/// The tally of one facet. Shades stand on axes; those of one axis exclude each other.
class Tally {
  public:
    Tally(const Material& material, std::string facet) : material_(&material), facet_(std::move(facet)) {}

    /// Opens an axis. `base` is what the shares are of, in words ("note start"), with as many and as long as
    /// there are, whether or not they show any of the shades. `shades` are the keys that stand on this axis.
    void open(const std::string& axis, ShareBy by, const std::string& one, const std::string& many, int count,
              Seconds time, const std::vector<std::string>& shades);

    /// Adds an occurrence. A note's place in range and song comes with the note.
    void add(const std::string& axis, const std::string& shade, Hit hit);
    void add(const std::string& axis, const std::string& shade, const SungNote& note, double clarity,
             std::string words);
    void add(const std::string& axis, const std::string& shade, Span span, double clarity, std::string words);

    /// Adds what the coach's moments say on this facet. A tag over a detected occurrence of the same shade
    /// confirms it; any other stands for itself, on the axis of its shade or on one of its own.
    void add_tags();

    [[nodiscard]] int count(const std::string& shade) const;
    [[nodiscard]] std::vector<Span> spans(const std::string& shade) const;
    /// The clearest occurrence; of equals the first.
    [[nodiscard]] std::optional<Example> best(const std::string& shade) const;
    /// The third of the range that holds at least `share` of the shade's occurrences; none when they spread
    /// or are fewer than four.
    [[nodiscard]] std::optional<int> gathered_in(const std::string& shade, double share = 0.6) const;

    [[nodiscard]] std::vector<ShadeShare> shares() const;
    /// The axes on which there is anything to count, those without any shade, too.
    [[nodiscard]] std::vector<ShadeAxis> axes() const;

  private:
    struct Axis {
        std::string name, one, many;
        ShareBy by = ShareBy::count;
        int count = 0;
        Seconds time;
    };
    struct Entry {
        std::string axis, shade;
        std::vector<Hit> hits;
    };
    Entry& entry(const std::string& axis, const std::string& shade);
    [[nodiscard]] const Entry* find(const std::string& shade) const;
    /// All axes with what stands on the coach's tags alone counted in; last, that of tags without an axis.
    struct Whole {
        Axis axis;
        bool more_than_tags = true; ///< there is more to count than tags alone
        [[nodiscard]] bool by_time() const { return axis.by == ShareBy::time && axis.time > Seconds(0); }
        [[nodiscard]] std::string of() const;
        [[nodiscard]] int out_of() const { return more_than_tags ? axis.count : 0; }
    };
    [[nodiscard]] std::vector<Whole> wholes() const;
    [[nodiscard]] ShadeShare share_of(const Entry& entry, const Whole& whole) const;

    const Material* material_;
    std::string facet_;
    std::vector<Axis> axes_;
    std::vector<Entry> entries_;
};

} // namespace luft::profile
