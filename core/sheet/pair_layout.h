// Where everything stands when two performances are drawn below each other: rows from top to bottom, in each
// A's line, the differences, B's line.
#pragma once

#include "sheet/layout.h"
#include "sheet/pair_rows.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace luft::sheet {

/// How large it is seen. All lengths in units of the canvas.
struct PairView {
    double width = 1000;
    double per_second = 90;
    double semitone = 7;
    bool as_sung = false; ///< else B is brought into A's key and tuning
};

/// Sizes of words; estimated where a function is empty.
struct Letters {
    Layout::Measure paragraph = {};
    Layout::WordWidth sung_word = {};
    std::function<double(std::string_view words, Type type)> width = {};
};
/// As they are set on a canvas, which must outlive it.
Letters letters_of(const Canvas& canvas);

struct PlacedPair {
    double top = 0, height = 0;
    Staff a, b;                             ///< from the row's top, on one scale; of height 0 never
    double between = 0;                     ///< from the row's top: where the signs of the differences begin
    std::optional<double> words_a, words_b; ///< base lines
};

/// A difference where it is: number and words, between the lines.
struct PairSign {
    std::size_t difference = 0; ///< index into the source's
    int number = 0;             ///< 1 for the first that isn't of the whole
    std::size_t row = 0;
    std::string words;
    double left = 0, width = 0, top = 0; ///< `top` from the row's top
    std::optional<Span> a, b;            ///< own times; what it marks in either line
};

/// From a note to its counterpart, where they stand at different places.
struct PairTie {
    std::size_t row = 0;
    Point a, b; ///< from the row's top
};

/// Notes that only one of the two sings.
struct PairAdded {
    std::size_t row = 0;
    Which which = Which::a;
    const project::Mark* note = nullptr;
};

class PairLayout {
  public:
    PairLayout(const PairSource& source, const PairView& view, const Letters& letters = {});

    [[nodiscard]] const PairSource& source() const { return source_; }
    [[nodiscard]] const PairView& view() const { return view_; }
    [[nodiscard]] const std::vector<PairRow>& rows() const { return rows_; }
    [[nodiscard]] const std::vector<PlacedPair>& places() const { return places_; }
    [[nodiscard]] const std::vector<PairSign>& signs() const { return signs_; } ///< by number
    [[nodiscard]] const std::vector<PairTie>& ties() const { return ties_; }
    [[nodiscard]] const std::vector<PairAdded>& added() const { return added_; }
    [[nodiscard]] const std::vector<PlacedWord>& words(Which which) const {
        return which == Which::a ? words_a_ : words_b_;
    }
    /// What stands over the first row, and the room that it takes.
    [[nodiscard]] const std::vector<std::string>& head() const { return head_; }
    [[nodiscard]] double head_height() const { return head_height_; }
    [[nodiscard]] double height() const; ///< head and rows

    [[nodiscard]] double origin() const; ///< left edge of every row's first sound
    [[nodiscard]] const Staff& staff(std::size_t row, Which which) const {
        return which == Which::a ? places_[row].a : places_[row].b;
    }
    /// One performance's line as it is drawn; nothing is sung in it where it has no counterpart.
    [[nodiscard]] SungLine line(std::size_t row, Which which) const;
    [[nodiscard]] double x_of(std::size_t row, Which which, Seconds own) const;
    /// Own time, within half a second of what the row shows.
    [[nodiscard]] Seconds time_at(std::size_t row, Which which, double x) const;
    [[nodiscard]] std::optional<std::size_t> row_of(Which which, Seconds own) const {
        return pair_row_of(rows_, which, own);
    }
    /// The row of a difference; none when it is of the whole.
    [[nodiscard]] std::optional<std::size_t> row_of(const compare::Difference& difference) const;
    [[nodiscard]] std::size_t row_under(double y) const; ///< y from the top of all; nearest row outside

  private:
    void place_rows(const std::vector<double>& signs);
    std::vector<double> place_signs(const Letters& letters);
    void place_words(const Letters& letters);
    void tie_notes();

    PairSource source_;
    PairView view_;
    LevelRange levels_a_, levels_b_;
    double shift_b_ = 0;
    std::vector<PairRow> rows_;
    std::vector<PlacedPair> places_;
    std::vector<PairSign> signs_;
    std::vector<PairTie> ties_;
    std::vector<PairAdded> added_;
    std::vector<PlacedWord> words_a_, words_b_;
    std::vector<std::string> head_;
    double head_height_ = 0;
};

/// The scale at which nine of ten rows fit that width, between 40 and 160 a second.
double pair_fitting_scale(const PairSource& source, double width);

} // namespace luft::sheet
