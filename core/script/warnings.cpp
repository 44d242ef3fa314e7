#include "script/warnings.h"

#include "base/text.h"
#include "script/figures.h"
#include "script/lay_asides.h"
#include "script/singing.h"
#include "script/title.h"

#include <algorithm>
#include <cmath>

namespace luft::script {
namespace {

std::string seconds_text(double seconds) {
    return fixed(seconds, 1) + " s";
}

std::string name_of(int stop_number, Seconds at) {
    return "Stop " + std::to_string(stop_number) + " at " + clock_text(at);
}

std::string name_of(const project::ScriptItem& aside) {
    return "The aside at " + clock_text(aside.at) + " (“" + one_line(aside.text, 30) + "”)";
}

const project::ScriptItem* item_of(const Source& source, project::ScriptItemId id) {
    for (const auto& item : source.items)
        if (item.id == id) return &item;
    return nullptr;
}

void warn_of_asides(const Source& source, const Grid& grid, CueSheet& sheet) {
    const auto sung = singing(source.marks);
    for (const AsideCue& aside : sheet.asides) {
        const auto* item = item_of(source, aside.item);
        if (!item) continue;
        const Seconds length = seconds(aside_length(source, grid, *item));
        const Seconds laid = seconds(aside.programme_end - aside.programme_start);
        Seconds over;
        for (const Span& s : sung)
            over += std::max(Seconds(0), std::min(s.end, aside.media_start + laid) -
                                             std::max(s.start, aside.media_start));
        if (over <= kEdge) continue;
        Warning w{WarningKind::aside_on_singing, aside.item, {}, {}};
        w.remedy = nearest_fit(free_for_aside(source, sheet, aside.item), aside.media_start, length);
        w.words = name_of(*item) + " lands on singing for " + seconds_text(over.value()) + "; " +
                  (w.remedy ? "the nearest rest that is long enough starts at " + clock_text(*w.remedy) + "."
                            : "no rest is long enough for its " + seconds_text(length.value()) +
                                  ": shorten it, or make it a stop.");
        sheet.warnings.push_back(std::move(w));
    }
}

void warn_of_stops_in_notes(const Source& source, CueSheet& sheet) {
    for (const Segment& s : sheet.segments) {
        if (s.kind != SegmentKind::talk || s.stop_number == 0 || !s.item) continue;
        const Seconds at = seconds(s.media_start);
        const marks::Note* note = note_at(source.marks, at);
        if (!note) continue;
        Warning w{WarningKind::stop_in_note, *s.item, {}, {}};
        const auto phrase_end = nearest_of(phrase_ends(source.marks), at);
        w.remedy = phrase_end ? phrase_end : note->span.end;
        w.words = name_of(s.stop_number, at) + " cuts a sung note in two; the nearest phrase end is at " +
                  clock_text(*w.remedy) + ".";
        sheet.warnings.push_back(std::move(w));
    }
}

void warn_of_close_stops(const Source& source, CueSheet& sheet) {
    const Seconds least = source.settings.least_between_stops;
    const Segment* last = nullptr;
    Rational played;
    for (const Segment& s : sheet.segments) {
        if (s.kind == SegmentKind::play) played += s.programme_end - s.programme_start;
        if (s.kind != SegmentKind::talk || s.stop_number == 0 || !s.item) continue;
        if (last && played > Rational(0) && seconds(played) < least) {
            Warning w{WarningKind::stops_too_close, *s.item, {}, {}};
            w.words = "Only " + seconds_text(played.as_double()) + " of music lie between stop " +
                      std::to_string(last->stop_number) + " and stop " + std::to_string(s.stop_number) +
                      " (set: " + seconds_text(least.value()) + "); join the two, or move one.";
            sheet.warnings.push_back(std::move(w));
        }
        last = &s;
        played = Rational(0);
    }
}

/// Media time of a phrase end inside the stretch, as near as can be to the first of equal parts that are each
/// short enough, and not right at the stretch's own ends.
std::optional<Seconds> place_to_speak(const CueSheet& sheet, const Stretch& stretch,
                                      const std::vector<Seconds>& ends, Seconds most, Seconds apart) {
    const double parts = std::ceil(stretch.length.as_double() / most.value());
    const double wanted = stretch.length.as_double() / parts;
    std::optional<Seconds> best;
    double best_distance = 0;
    double before = 0; // length of the pieces before this one
    for (const auto& piece : stretch.pieces) {
        const Segment& s = sheet.segments[piece.segment];
        const double length = (piece.end - piece.start).as_double();
        if (s.kind == SegmentKind::play) {
            const Rational media = s.media_start + (piece.start - s.programme_start);
            for (const Seconds end : ends) {
                const double offset = end.value() - media.as_double();
                const double place = before + offset;
                if (offset < 0 || offset > length) continue;
                if (place < apart.value() || place > stretch.length.as_double() - apart.value()) continue;
                if (best && std::abs(place - wanted) >= best_distance) continue;
                best = end;
                best_distance = std::abs(place - wanted);
            }
        }
        before += length;
    }
    return best;
}

void warn_of_long_quotes(const Source& source, CueSheet& sheet) {
    const Seconds most = source.settings.longest_quote;
    if (most <= Seconds(0)) return;
    const auto ends = phrase_ends(source.marks);
    for (const Stretch& stretch : stretches(source, sheet)) {
        if (seconds(stretch.length) <= most) continue;
        Warning w{WarningKind::quote_too_long, {}, {}, {}};
        for (const Seconds apart : {source.settings.least_between_stops, Seconds(1)})
            if (!w.remedy) w.remedy = place_to_speak(sheet, stretch, ends, most, apart);
        const auto& first = stretch.pieces.front();
        w.programme_start = first.start;
        const Segment& s = sheet.segments[first.segment];
        const Rational from = s.media_start + (first.start - s.programme_start) * s.speed;
        w.words = "From " + clock_text(seconds(from)) + " of the recording on, " +
                  seconds_text(stretch.length.as_double()) + " run without a spoken word (set: at most " +
                  seconds_text(most.value()) + "); " +
                  (w.remedy ? "a phrase ends at " + clock_text(*w.remedy) + ", where a few words would fit."
                            : "no phrase ends inside it: shorten it, or speak over an instrumental bar.");
        sheet.warnings.push_back(std::move(w));
    }
}

void warn_of_share(const Source& source, CueSheet& sheet) {
    const auto most = source.settings.most_quoted_share;
    if (!most || sheet.quoted_share <= *most) return;
    const double length = sheet.quoted_once.as_double() / sheet.quoted_share;
    Warning w{WarningKind::share_too_large, {}, {}, {}};
    w.words = "The programme plays " + fixed(100 * sheet.quoted_share, 0) +
              " % of the recording (set: at most " + fixed(100 * *most, 0) + " %); it would have to quote " +
              seconds_text(sheet.quoted_once.as_double() - *most * length) +
              " less: let stops go on later in the recording, or end it earlier.";
    sheet.warnings.push_back(std::move(w));
}

} // namespace

Warning outside_warning(int stop_number, const project::ScriptItem& item, Seconds recording) {
    return {WarningKind::stop_outside, item.id,
            name_of(stop_number, item.at) + " lies outside the recording, which is " + clock_text(recording) +
                " long.",
            item.at < Seconds(0) ? Seconds(0) : recording};
}

Warning skipped_warning(int stop_number, const project::ScriptItem& item) {
    return {WarningKind::stop_outside,
            item.id,
            name_of(stop_number, item.at) +
                " lies in a part that an earlier stop skips; its talk comes without music before it.",
            {}};
}

Warning aside_not_played_warning(const project::ScriptItem& item) {
    return {WarningKind::stop_outside,
            item.id,
            name_of(item) + " lies in no part of the recording that is played, and is left out.",
            {}};
}

Warning cut_off_warning(const project::ScriptItem& item, Rational too_long, bool by_aside) {
    return {WarningKind::aside_cut_off,
            item.id,
            name_of(item) + " is " + seconds_text(too_long.as_double()) + " too long: " +
                (by_aside ? "the next aside begins." : "the playback halts before it is said."),
            {}};
}

void warn(const Source& source, const Grid& grid, CueSheet& sheet) {
    warn_of_share(source, sheet);
    warn_of_long_quotes(source, sheet);
    warn_of_stops_in_notes(source, sheet);
    warn_of_close_stops(source, sheet);
    warn_of_asides(source, grid, sheet);
    // By place in the recording; what concerns the whole programme has no item and comes first.
    std::ranges::stable_sort(sheet.warnings, {}, [&](const Warning& w) {
        const auto* item = w.item.value == 0 ? nullptr : item_of(source, w.item);
        return item ? item->at : Seconds(-1);
    });
}

} // namespace luft::script
