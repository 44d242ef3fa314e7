#include "export/teleprompter.h"

#include "base/text.h"
#include "export/cue_rows.h"
#include "export/cue_time.h"
#include "export/lead_in.h"
#include "export/page.h"
#include "script/others.h"

#include <algorithm>

namespace luft::exports {
namespace {

// Capitals 1/150 of the distance high are read with ease (common practice, no source): 13 mm at two metres,
// and a capital is about 0.7 of its type's size. Where the page is narrower than a hand of words, smaller.
constexpr std::string_view kStyle = R"css(
main { max-width: none; padding: 1rem 4vw 40vh; }
header { margin-bottom: 0; }
.block { min-height: 88vh; padding: 2.5rem 0; border-bottom: 2px solid var(--rule); break-after: page; }
.block:last-of-type { break-after: auto; }
.block h2 { display: flex; align-items: center; gap: 0.5em; margin: 0 0 0.4em; font-size: min(9mm, 5vw); color: var(--soft);
  font-weight: 400; }
.number { flex: none; min-width: 1.6em; padding: 0 0.3em; border-radius: 0.8em; background: var(--ink); color: var(--paper);
  text-align: center; line-height: 1.6; font-weight: 600; font-variant-numeric: lining-nums tabular-nums; }
.before { font-size: min(9mm, 5vw); line-height: 1.3; color: var(--soft); margin-bottom: 0.6em; }
.before q { font-style: italic; color: var(--ink); }
.words { font-size: min(18mm, 10vw); line-height: 1.3; font-weight: 500; white-space: pre-line; overflow-wrap: anywhere; }
.after { font-size: min(9mm, 5vw); line-height: 1.3; color: var(--soft); }
@media print { .block { min-height: 0; border: none; } }
)css";

std::string length_words(Rational length) {
    return fixed(length.as_double(), length < Rational(10) ? 1 : 0) + " s";
}

/// Walks through the programme, keeping what has been heard since the last word.
class Blocks {
  public:
    Blocks(const script::Source& source, const script::CueSheet& sheet) : source_(source), sheet_(sheet) {}

    std::string run() {
        for (const CueRow& row : cue_rows(sheet_)) {
            if (row.aside)
                aside(*row.aside);
            else if (row.segment->kind == script::SegmentKind::talk)
                talk(*row.segment);
            else
                played_ = row.segment;
        }
        return out_.empty() ? element("p", "lead", "There are no words in this script yet.") : out_;
    }

  private:
    void block(const std::string& number, const std::string& heading, const std::string& before_html,
               const std::string& text, const std::string& after, const std::string& then = {}) {
        out_ += "<section class=\"block\">\n<h2>" +
                (number.empty() ? "" : "<span class=\"number\">" + safe(number) + "</span>") + "<bdi>" +
                safe(heading) + "</bdi></h2>\n";
        if (!before_html.empty()) out_ += "<p class=\"before\">" + before_html + "</p>\n";
        out_ += count_words(text) == 0 ? element("p", "words", "(no words yet)")
                                       : "<p class=\"words\" dir=\"auto\">" + safe(text) + "</p>\n";
        out_ +=
            element("p", "after", after) + (then.empty() ? "" : element("p", "after", then)) + "</section>\n";
    }

    void talk(const script::Segment& s) {
        std::string heading = s.title;
        const std::string start = "Stop " + std::to_string(s.stop_number) + ": ";
        if (s.stop_number > 0 && heading.starts_with(start)) heading.erase(0, start.size());
        block(s.stop_number > 0 ? std::to_string(s.stop_number) : "", heading, before(), s.text,
              length_words(s.programme_end - s.programme_start) + ", from " +
                  clock_text(seconds(s.programme_start)) + " of the programme",
              heard_then(s));
        played_ = nullptr;
    }

    void aside(const script::AsideCue& a) {
        block("", "Over the music",
              "At " + clock_text(a.media_start) + " of the recording" + sung_before(a.media_start), a.text,
              length_words(a.programme_end - a.programme_start) + ", while the music goes on");
    }

    /// The other performance that the talk leads to, if it does: what comes after it may be one's own again
    /// before the next words.
    [[nodiscard]] std::string heard_then(const script::Segment& talk) const {
        auto next = std::ranges::find(sheet_.segments, &talk, [](const script::Segment& s) { return &s; });
        if (next != sheet_.segments.end()) ++next;
        if (next == sheet_.segments.end() || !next->other) return {};
        return "Then " + script::performance_name(script::performance_of(source_, *next)) + " plays from " +
               clock_text(seconds(next->media_start)) + " to " + clock_text(seconds(next->media_end)) +
               " of its recording, for " + length_words(next->programme_end - next->programme_start);
    }

    [[nodiscard]] std::string before() const {
        if (!played_) return {};
        const bool again = played_->kind == script::SegmentKind::replay;
        const Seconds end = seconds(played_->media_end);
        if (played_->other)
            return "Plays " + safe(script::performance_name(script::performance_of(source_, *played_))) +
                   " for " + length_words(played_->programme_end - played_->programme_start) + ", up to " +
                   clock_text(end);
        return (again ? "Plays again for " : "Plays for ") +
               length_words(played_->programme_end - played_->programme_start) +
               (again ? ", up to " : ", halts at ") + clock_text(end) + sung_before(end);
    }

    [[nodiscard]] std::string sung_before(Seconds t) const {
        const std::string words = lead_in(source_, t);
        return words.empty() ? "" : ": <q dir=\"auto\">" + safe(words) + "</q>";
    }

    const script::Source& source_;
    const script::CueSheet& sheet_;
    const script::Segment* played_ = nullptr; ///< the music since the last talk
    std::string out_;
};

} // namespace

std::string teleprompter(const script::Source& source, const script::CueSheet& sheet) {
    PageText text;
    text.kind = "Teleprompter";
    text.title = source.piece.title.empty() ? "Untitled piece" : source.piece.title;
    if (!source.performance.performer.empty()) text.subtitle = "sung by " + source.performance.performer;
    text.facts = {clock_text(seconds(sheet.running_time)) + " in all",
                  clock_text(seconds(sheet.talk_time)) + " of it spoken"};
    text.body_html = Blocks(source, sheet).run();
    text.extra_css = kStyle;
    return page(text);
}

} // namespace luft::exports
