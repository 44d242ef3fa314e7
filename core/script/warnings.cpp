#include "script/warnings.h"

#include "base/text.h"
#include "script/lay_asides.h"
#include "script/others.h"
#include "script/quote_warnings.h"
#include "script/singing.h"
#include "script/title.h"

#include <algorithm>

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

} // namespace

Warning quote_outside_warning(int stop_number, const project::ScriptItem& item,
                              const project::Performance* other) {
    const std::string quoted = clock_text(item.quote->span.start) + " to " + clock_text(item.quote->span.end);
    return {WarningKind::quote_outside,
            item.id,
            name_of(stop_number, item.at) +
                (other ? " quotes " + performance_name(*other) + " from " + quoted +
                             ", but its recording is " + clock_text(other->facts.duration) + " long."
                       : " quotes a performance that is no longer in the project."),
            {}};
}

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
    warn_of_quotes(source, sheet);
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
