#include "export/cue_pdf_table.h"

#include "base/text.h"
#include "export/cue_rows.h"
#include "export/cue_time.h"
#include "export/cue_words.h"

namespace luft::exports {
namespace {

constexpr double kMediaColumn = kCueMediaColumn, kCueColumn = 172, kBesideBar = 10;
constexpr double kDisc = 9.5;   ///< radius
constexpr int kWholeUpTo = 120; ///< words of a talk that is never torn apart; some twelve lines
constexpr double kBeforeRow = 6, kAfterRow = 7;

class Table {
  public:
    Table(sheet::Flow& flow, const Print& print, const script::Source& source, const script::CueSheet& sheet)
        : flow_(flow), print_(print), c_(print.colours), source_(source), sheet_(sheet) {}

    void run() {
        sheet::FlowRow head;
        head.cells = {
            {0, kMediaColumn - 8, {words_in("Programme", print_.small, c_.soft)}},
            {kMediaColumn, kCueColumn - kMediaColumn - 8, {words_in("Recording", print_.small, c_.soft)}},
            {kCueColumn, flow_.paper().room_across() - kCueColumn, {words_in("Cue", print_.small, c_.soft)}}};
        head.below = 3;
        head.rule = c_.soft;
        flow_.head(std::move(head));
        for (const CueRow& row : cue_rows(sheet_)) {
            if (row.aside)
                aside(*row.aside);
            else if (row.segment->kind == script::SegmentKind::talk)
                talk(*row.segment);
            else
                music(*row.segment);
        }
        flow_.row(timed(programme_timecode(sheet_, sheet_.running_time), "", "", "", true,
                        {words_in("End of the programme", print_.plain, c_.ink)}, 0));
        flow_.end_head();
    }

  private:
    sheet::FlowRow timed(const std::string& programme, const std::string& length, const std::string& media,
                         const std::string& note, bool strong, std::vector<sheet::Text> what, double indent) {
        sheet::FlowRow row;
        sheet::Type time = print_.plain;
        time.bold = strong;
        row.cells = {
            {0,
             kMediaColumn - 8,
             {words_in(programme, time, c_.ink), words_in(length, print_.small, c_.soft)}},
            {kMediaColumn,
             kCueColumn - kMediaColumn - 8,
             {words_in(media, print_.plain, c_.ink), words_in(note, print_.small, c_.soft)}},
            {kCueColumn + indent, flow_.paper().room_across() - kCueColumn - indent, std::move(what)}};
        row.above = kBeforeRow;
        row.below = kAfterRow;
        row.rule = c_.rule;
        return row;
    }

    /// Titles begin small; here they stand at the start of a line.
    static std::string capital(std::string title) {
        if (!title.empty() && title[0] >= 'a' && title[0] <= 'z')
            title[0] = static_cast<char>(title[0] - 'a' + 'A');
        return title;
    }

    void add(sheet::FlowRow row, const std::string& text) {
        const bool whole = count_words(text) <= kWholeUpTo;
        if (whole) flow_.keep();
        flow_.row(std::move(row));
        if (whole) flow_.end_keep();
    }

    sheet::Text spoken(const std::string& text) const {
        if (count_words(text) == 0)
            return words_in("no words yet", {print_.plain.size, false, true}, c_.soft, 2);
        return words_in(text, print_.spoken, c_.ink, 2);
    }

    sheet::FlowRow spoken_row(const std::string& heading, const std::string& text, Rational from, Rational to,
                              Seconds media, const std::string& note) {
        sheet::Text title = words_in(heading, print_.heading, c_.ink);
        title.heading = true;
        return timed(programme_timecode(sheet_, from), length_words(to - from), clock_text(media), note, true,
                     {std::move(title), spoken(text)}, kBesideBar);
    }

    void talk(const script::Segment& s) {
        auto row = spoken_row(capital(talk_heading(s)), s.text, s.programme_start, s.programme_end,
                              seconds(s.media_start), "stands");
        row.bar = sheet::Bar{kCueColumn, 3, c_.change, false};
        if (s.stop_number > 0) number(row, s.stop_number);
        add(std::move(row), s.text);
    }

    /// The stop's number in a disc, before its heading.
    void number(sheet::FlowRow& row, int stop) {
        const double middle = kCueColumn + kBesideBar + kDisc + 2;
        row.cells.back().left += 2 * kDisc + 8;
        row.cells.back().width -= 2 * kDisc + 8;
        const auto& c = c_;
        row.sign = [middle, stop, &c](sheet::Canvas& canvas, double top) {
            canvas.frame(middle - kDisc, top - 1, 2 * kDisc, 2 * kDisc, c.ink, 1.2, kDisc);
            canvas.text(middle, top - 1 + kDisc + 4, std::to_string(stop),
                        {stop < 100 ? 11.0 : 9.0, true, false}, c.ink, sheet::Anchor::middle);
        };
    }

    void music(const script::Segment& s) {
        const bool again = s.kind == script::SegmentKind::replay;
        auto row = timed(programme_timecode(sheet_, s.programme_start),
                         length_words(s.programme_end - s.programme_start), media_place(source_, s),
                         "to " + clock_text(seconds(s.media_end)), false,
                         {words_in(music_words(sheet_, s), print_.plain, c_.soft)}, kBesideBar + 14);
        const auto& c = c_;
        const bool other = s.other.has_value();
        row.sign = [again, other, &c](sheet::Canvas& canvas, double top) {
            const double x = kCueColumn + kBesideBar, y = top + 2;
            const auto triangle = sheet::Path().move(x, y).line(x + 9, y + 5).line(x, y + 10).close();
            if (other) { // framed: from elsewhere
                canvas.frame(x - 5, y - 2, 15, 14, c.strength, 1.2, 2);
                return canvas.fill(
                    sheet::Path().move(x - 1, y + 1).line(x + 6, y + 5).line(x - 1, y + 9).close(),
                    c.strength);
            }
            if (!again) return canvas.fill(triangle, c.chest);
            canvas.stroke(triangle, c.chest, 1.3);
            canvas.line(x - 4, y, x - 4, y + 10, c.chest, 1.6);
        };
        flow_.row(std::move(row));
    }

    void aside(const script::AsideCue& a) {
        auto row = spoken_row("Over the music", a.text, a.programme_start, a.programme_end, a.media_start,
                              "goes on");
        row.bar = sheet::Bar{kCueColumn, 4, c_.head, true};
        add(std::move(row), a.text);
    }

    sheet::Flow& flow_;
    const Print& print_;
    const sheet::Colours& c_;
    const script::Source& source_;
    const script::CueSheet& sheet_;
};

} // namespace

void add_cue_table(sheet::Flow& flow, const Print& print, const script::Source& source,
                   const script::CueSheet& sheet) {
    Table(flow, print, source, sheet).run();
}

} // namespace luft::exports
