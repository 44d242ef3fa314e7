#include "desk/work/script_rows.h"

#include "base/text.h"
#include "script/grid.h"
#include "script/others.h"
#include "script/singing.h"
#include "script/title.h"

#include <algorithm>

namespace luft::desk {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;
using script::CueSheet;
using script::Segment;
using script::SegmentKind;

constexpr std::size_t kSungWords = 60; ///< characters of the words under the line that a row shows

/// The words that are sung in a span, divided ones put together.
std::string sung(const script::Source& source, Span span) {
    std::string out;
    bool joins = false;
    for (const auto& word : source.sung_words) {
        if (!span.contains(word.at)) continue;
        if (!out.empty() && !joins) out += ' ';
        out += word.text;
        joins = word.joins;
    }
    return script::one_line(out, kSungWords);
}

std::string from_to(Span span) {
    return clock_text(span.start) + " to " + clock_text(span.end);
}

std::string after_stop(const script::Source& source, const ScriptItem& item) {
    std::string out;
    if (item.quote) {
        const auto* other = script::other_of(source, item.quote->performance);
        out = (other ? script::one_line(other->performance.label) : "a performance that is gone,") + " " +
              from_to(item.quote->span);
    }
    if (item.replay) out += (out.empty() ? "" : " and ") + from_to(*item.replay) + " again";
    if (!out.empty())
        out =
            "plays " + out + (item.replay_speed < 1 ? " at " + fixed(100 * item.replay_speed, 0) + " %" : "");
    if (item.resume) out += (out.empty() ? "goes on at " : "; goes on at ") + clock_text(*item.resume);
    return out.empty() ? out : "then " + out;
}

class Rows {
  public:
    Rows(const script::Source& source, const CueSheet& sheet) : source_(source), sheet_(sheet) {}

    std::vector<ScriptRow> run() {
        for (const Segment& segment : sheet_.segments) {
            if (segment.kind == SegmentKind::play) {
                music(segment);
            } else if (segment.kind == SegmentKind::talk && segment.item) {
                talk(*item_of(*segment.item), segment.stop_number,
                     clock_text(seconds(segment.programme_start)));
            }
        }
        for (const ScriptItem& item : source_.items)
            if (std::ranges::none_of(rows_, [&](const ScriptRow& row) { return row.item == item.id; }))
                insert(item);
        for (const Segment& segment : sheet_.segments) // a quote may begin with what is played after a talk
            if (segment.kind == SegmentKind::replay || segment.kind == SegmentKind::quote)
                for (ScriptRow& row : rows_)
                    if (row.item == segment.item) add_quotes(segment, row);
        for (ScriptRow& row : rows_)
            for (std::size_t i = 0; i < sheet_.warnings.size(); ++i)
                if (row.item && sheet_.warnings[i].item == *row.item) row.warnings.push_back(i);
        return std::move(rows_);
    }

  private:
    const ScriptItem* item_of(project::ScriptItemId id) const {
        const auto at = std::ranges::find(source_.items, id, &ScriptItem::id);
        return at == source_.items.end() ? nullptr : &*at;
    }

    ScriptRow row_of(const ScriptItem& item, int number, std::string when) const {
        ScriptRow row;
        const bool aside = item.kind == ScriptItemKind::aside;
        row.kind = aside ? ScriptRow::Kind::aside : ScriptRow::Kind::talk;
        row.item = item.id;
        row.stop_number = number;
        row.title = aside ? "Aside at " + clock_text(item.at) : script::title_of(source_, item, number);
        row.when = std::move(when);
        row.facts = talk_facts(item, source_.settings);
        row.text = item.text;
        row.after = after_stop(source_, item);
        row.own_words = item.own_words;
        return row;
    }

    void talk(const ScriptItem& item, int number, std::string when) {
        rows_.push_back(row_of(item, number, std::move(when)));
    }

    void music(const Segment& segment) {
        const Span span{seconds(segment.media_start), seconds(segment.media_end)};
        ScriptRow row;
        row.title = "Music " + clock_text(span.start) + " to " + clock_text(span.end);
        row.when = clock_text(seconds(segment.programme_start));
        std::size_t phrases = 0;
        for (const Span& phrase : script::phrases(source_.marks))
            if (phrase.end > span.start && phrase.end <= span.end + script::kEdge) ++phrases;
        row.facts = fixed(span.length().value(), 1) + " s" +
                    (phrases > 0 ? ", " + counted(phrases, "phrase") : std::string());
        row.text = sung(source_, span);
        add_quotes(segment, row);
        rows_.push_back(std::move(row));
        for (const auto& aside : sheet_.asides)
            if (aside.programme_start >= segment.programme_start &&
                aside.programme_start < segment.programme_end)
                rows_.push_back(row_of(*item_of(aside.item), 0, clock_text(seconds(aside.programme_start))));
    }

    /// Quotes too long that begin in a segment.
    void add_quotes(const Segment& segment, ScriptRow& row) const {
        for (std::size_t i = 0; i < sheet_.warnings.size(); ++i)
            if (const auto from = sheet_.warnings[i].programme_start)
                if (*from >= segment.programme_start && *from < segment.programme_end)
                    row.warnings.push_back(i);
    }

    /// One that isn't in the programme: before the first row of a later place.
    void insert(const ScriptItem& item) {
        const auto before = std::ranges::find_if(rows_, [&](const ScriptRow& row) {
            const ScriptItem* other = row.item ? item_of(*row.item) : nullptr;
            return other && other->position > item.position;
        });
        const auto at = item.kind == ScriptItemKind::opening ? rows_.begin() : before;
        rows_.insert(at, row_of(item, 0, ""));
    }

    const script::Source& source_;
    const CueSheet& sheet_;
    std::vector<ScriptRow> rows_;
};

} // namespace

std::vector<ScriptRow> script_rows(const script::Source& source, const CueSheet& sheet) {
    return Rows(source, sheet).run();
}

std::vector<std::size_t> warnings_on_the_whole(const std::vector<ScriptRow>& rows, const CueSheet& sheet) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < sheet.warnings.size(); ++i)
        if (std::ranges::none_of(rows, [&](const ScriptRow& row) {
                return std::ranges::find(row.warnings, i) != row.warnings.end();
            }))
            out.push_back(i);
    return out;
}

std::string talk_facts(const ScriptItem& item, const project::ScriptSettings& settings) {
    const auto words = static_cast<std::size_t>(count_words(item.text));
    if (item.rehearsed)
        return counted(words, "word") + ", " + fixed(item.rehearsed->value(), 1) + " s as rehearsed";
    if (words == 0) return "no words yet";
    const double length = script::time_to_say(item.text, settings.words_per_minute).as_double();
    return counted(words, "word") + ", " + fixed(length, 1) + " s";
}

} // namespace luft::desk
