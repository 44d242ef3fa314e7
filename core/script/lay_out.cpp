// Lays the script out: halts and music in turn, every segment whole frames of the programme.
#include "base/error.h"
#include "base/text.h"
#include "script/cue_sheet.h"
#include "script/figures.h"
#include "script/grid.h"
#include "script/lay_asides.h"
#include "script/others.h"
#include "script/timecode.h"
#include "script/title.h"
#include "script/warnings.h"

#include <algorithm>

namespace luft::script {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

/// A stop that has no words yet still halts for this long, so that it is seen and heard in a rehearsal.
constexpr Rational kWordlessHalt{1};

class Layout {
  public:
    explicit Layout(const Source& source)
        : source_(source), grid_(programme_rate(source.settings, source.performance.facts)),
          end_(grid_.frames_in(source.performance.facts.duration)) {
        sheet_.frame_rate = grid_.rate();
        sheet_.drop_frame = source.settings.drop_frame && can_drop_frames(grid_.rate());
    }

    CueSheet run() {
        for (const ScriptItem& item : source_.items)
            exact(item.at); // refuses what isn't a time
        for (const ScriptItem* item : items(ScriptItemKind::opening)) {
            talk(*item, 0, 0);
            if (item->resume) media_ = clamped(*item->resume);
        }
        int number = 0;
        for (const ScriptItem* item : items(ScriptItemKind::stop))
            stop(*item, ++number);
        const auto closings = items(ScriptItemKind::closing);
        play_to(closings.empty() ? end_ : last_frame(*closings.front()));
        for (const ScriptItem* item : closings)
            talk(*item, media_, 0);
        sheet_.running_time = grid_.time(programme_);
        lay_asides(source_, grid_, items(ScriptItemKind::aside), sheet_);
        sum_up(source_, grid_.time(end_), sheet_);
        warn(source_, grid_, sheet_);
        return std::move(sheet_);
    }

  private:
    /// Items of a kind: stops and asides by media time, the rest in the script's order.
    [[nodiscard]] std::vector<const ScriptItem*> items(ScriptItemKind kind) const {
        std::vector<const ScriptItem*> out;
        for (const auto& item : source_.items)
            if (item.kind == kind) out.push_back(&item);
        std::ranges::stable_sort(out, {}, [](const ScriptItem* i) { return i->position; });
        if (kind == ScriptItemKind::stop || kind == ScriptItemKind::aside)
            std::ranges::stable_sort(out, {}, [](const ScriptItem* i) { return i->at; });
        return out;
    }

    [[nodiscard]] std::int64_t clamped(Seconds t) const {
        return std::clamp<std::int64_t>(grid_.nearest(t), 0, end_);
    }

    /// Where playback ends: the closing's place; 0 stands for the recording's end.
    [[nodiscard]] std::int64_t last_frame(const ScriptItem& closing) const {
        return closing.at > Seconds(0) ? clamped(closing.at) : end_;
    }

    Segment& add(SegmentKind kind, std::int64_t frames, std::int64_t media_from, std::int64_t media_to) {
        Segment s;
        s.kind = kind;
        s.programme_start = grid_.time(programme_);
        programme_ += frames;
        s.programme_end = grid_.time(programme_);
        s.media_start = grid_.time(media_from);
        s.media_end = grid_.time(media_to);
        return sheet_.segments.emplace_back(std::move(s));
    }

    void talk(const ScriptItem& item, std::int64_t picture, int number) {
        const Rational length = item.rehearsed ? exact(*item.rehearsed)
                                               : time_to_say(item.text, source_.settings.words_per_minute);
        if (length < Rational(0))
            throw Error(Fault::bad_request, "A talk in the script is shorter than nothing.");
        std::int64_t frames = grid_.frames_for(length);
        if (frames == 0) {
            if (item.kind != ScriptItemKind::stop) return; // an opening without words isn't there yet
            frames = grid_.frames_for(kWordlessHalt);
        }
        Segment& s = add(SegmentKind::talk, frames, picture, picture);
        s.item = item.id;
        s.stop_number = number;
        s.title = title_of(source_, item, number);
        s.text = item.text;
    }

    void play_to(std::int64_t to) {
        if (to <= media_) return;
        add(SegmentKind::play, to - media_, media_, to).title = "Play";
        media_ = to;
    }

    void stop(const ScriptItem& item, int number) {
        const std::int64_t at = clamped(item.at);
        if (item.at < Seconds(0) || exact(item.at) > grid_.time(end_) + grid_.time(1))
            sheet_.warnings.push_back(outside_warning(number, item, source_.performance.facts.duration));
        else if (at < media_) // an earlier stop went on behind this place
            sheet_.warnings.push_back(skipped_warning(number, item));
        play_to(at);
        talk(item, at, number);
        if (item.quote) quote(item, number);
        if (item.replay) replay(item, number);
        if (item.resume) media_ = clamped(*item.resume);
    }

    /// What is heard after a talk: null when no frame of it is left.
    Segment* heard_after(const ScriptItem& item, int number, SegmentKind kind, Span span, std::int64_t end) {
        if (!(item.replay_speed >= 0.25 && item.replay_speed <= 1))
            throw Error(Fault::bad_request, "A replay's speed must lie between 0.25 and 1.");
        const Rational speed = nearest_rational(item.replay_speed, 1000);
        const std::int64_t from = std::clamp<std::int64_t>(grid_.nearest(span.start), 0, end);
        const std::int64_t to = std::clamp<std::int64_t>(grid_.nearest(span.end), 0, end);
        if (to <= from) return nullptr;
        Segment& s = add(kind, (Rational(to - from) / speed).ceil(), from, to);
        s.speed = speed;
        s.item = item.id;
        s.stop_number = number;
        return &s;
    }

    void quote(const ScriptItem& item, int number) {
        const Span span = item.quote->span;
        const Other* other = other_of(source_, item.quote->performance);
        const std::int64_t end = other ? grid_.frames_in(other->performance.facts.duration) : 0;
        if (span.start < Seconds(0) || exact(span.end) > grid_.time(end) + grid_.time(1))
            sheet_.warnings.push_back(
                quote_outside_warning(number, item, other ? &other->performance : nullptr));
        Segment* s = other ? heard_after(item, number, SegmentKind::quote, span, end) : nullptr;
        if (!s) return;
        s->other = item.quote->performance;
        s->title = quote_title(other->performance, s->speed);
    }

    void replay(const ScriptItem& item, int number) {
        if (Segment* s = heard_after(item, number, SegmentKind::replay, *item.replay, end_))
            s->title = replay_title(s->speed);
    }

    const Source& source_;
    Grid grid_;
    std::int64_t end_ = 0;       ///< the recording's length, in frames
    std::int64_t programme_ = 0; ///< where the programme is
    std::int64_t media_ = 0;     ///< where the recording is
    CueSheet sheet_;
};

} // namespace

CueSheet lay_out(const Source& source) {
    return Layout(source).run();
}

} // namespace luft::script
