// Where everything of a sheet stands: rows from top to bottom on one time scale, moments' cards in the
// margin.
#pragma once

#include "sheet/canvas.h"
#include "sheet/ribbon.h"
#include "sheet/rows.h"
#include "sheet/sung_line.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace luft::sheet {

/// How large the sheet is seen. All lengths in units of the canvas.
struct View {
    double width = 1000;    ///< of the whole sheet, margin included
    double per_second = 90; ///< along a row
    double semitone = 7;    ///< up a row
    double margin = 250;    ///< right part for the moments' cards; 0 for none
    /// Moments that are shown; all for an empty function. Numbers stay as they are.
    std::function<bool(const project::Moment&)> wanted = {};
};

/// Details that need room appear from these scales on.
inline constexpr double kEdgesFrom = 60;    ///< units a second: glyphs of onsets and offsets
inline constexpr double kFiguresFrom = 150; ///< vibrato and intonation in figures

/// What a card in the margin says.
struct CardWords {
    std::string title;  ///< shades by name
    std::string remark; ///< the coach's words, else the evidence
    bool own_remark = false;
    std::string drill; ///< title; empty for none
};
CardWords card_words(const project::Moment& moment, const vocabulary::Vocabulary& vocabulary);

struct PlacedRow {
    double top = 0, height = 0;
    double staff_top = 0, staff_bottom = 0; ///< from the row's top
    double high = 0;                        ///< pitch at the staff's top
    std::optional<double> words; ///< base line of the words, from the row's top; none without words
};

/// A moment over the ribbon of a row.
struct Bracket {
    std::size_t moment = 0; ///< index into the source's moments
    int number = 0;         ///< 1 for the performance's first moment
    std::size_t row = 0;
    double left = 0, right = 0;
    int lane = 0; ///< 0 is nearest to the staff
    bool begins = true, ends = true;
};

struct Card {
    std::size_t moment = 0;
    int number = 0;
    std::size_t row = 0;
    double left = 0, top = 0, width = 0, height = 0; ///< `top` from the row's top
};

/// A word or syllable under its row.
struct PlacedWord {
    const project::SungWord* word = nullptr;
    std::size_t row = 0;
    double left = 0, width = 0;
    double size = 0;                   ///< of its type
    std::vector<double> hyphens = {};  ///< middles of those between it and the next one
    double line_from = 0, line_to = 0; ///< under a melisma; equal for none
};

class Layout {
  public:
    /// Height of words set in lines of a width; Canvas::paragraph_height, or anything else in tests.
    using Measure = std::function<double(double width, std::string_view words, Type type, int most_lines)>;

    /// Width of a sung word, set in kSungWord; see WordWidths.
    using WordWidth = std::function<double(std::string_view word)>;

    /// The source must outlive the layout. Without `width` a word's width is estimated from its length.
    Layout(const profile::Source& source, const View& view, const Measure& measure,
           const WordWidth& width = {});

    [[nodiscard]] const profile::Source& source() const { return *source_; }
    [[nodiscard]] const View& view() const { return view_; }
    [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }
    [[nodiscard]] const std::vector<PlacedRow>& places() const { return places_; }
    // Each row by row.
    [[nodiscard]] const std::vector<Bracket>& brackets() const { return brackets_; }
    [[nodiscard]] const std::vector<Card>& cards() const { return cards_; }
    [[nodiscard]] const std::vector<PlacedWord>& words() const { return words_; } ///< in their order
    // Those of one row: a day of singing has more of them than there is time to look through for a frame.
    [[nodiscard]] std::span<const Bracket> brackets_on(std::size_t row) const;
    [[nodiscard]] std::span<const Card> cards_on(std::size_t row) const;
    [[nodiscard]] std::span<const PlacedWord> words_on(std::size_t row) const;
    [[nodiscard]] double height() const;
    [[nodiscard]] LevelRange levels() const { return levels_; }

    /// Left edge of a phrase's first sound, on every row.
    [[nodiscard]] double origin() const;
    /// Right edge of what a row may be drawn in; the margin begins there.
    [[nodiscard]] double right_edge() const { return view_.width - view_.margin; }

    [[nodiscard]] double x_of(std::size_t row, Seconds time) const;
    [[nodiscard]] double y_of(std::size_t row, double pitch) const { return staff(row).y_of(pitch); }
    [[nodiscard]] Seconds time_at(std::size_t row, double x) const; ///< inside what the row shows
    [[nodiscard]] double pitch_at(std::size_t row, double y) const { return staff(row).pitch_at(y); }
    [[nodiscard]] Staff staff(std::size_t row) const; ///< from the row's top
    /// The singing of a row, as it is drawn.
    [[nodiscard]] SungLine line(std::size_t row) const;
    [[nodiscard]] std::size_t row_of(Seconds time) const { return row_at(rows_, time); }
    [[nodiscard]] std::size_t row_under(double y) const; ///< y from the sheet's top; nearest row outside

  private:
    void place_brackets();
    void place_rows(const Measure& measure);
    [[nodiscard]] double rest_width(std::size_t row) const;

    const profile::Source* source_;
    View view_;
    LevelRange levels_;
    std::vector<Row> rows_;
    std::vector<PlacedRow> places_;
    std::vector<Bracket> brackets_;
    std::vector<Card> cards_;
    std::vector<PlacedWord> words_;
};

/// The scale at which nine of ten phrases fit a sheet of that width on one row, between 40 and 160 a second.
double fitting_scale(const profile::Source& source, double width, double margin);
/// The same for lines of these lengths in seconds, with so much room.
double scale_for(const std::vector<double>& lengths, double room);

} // namespace luft::sheet
