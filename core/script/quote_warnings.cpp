#include "script/quote_warnings.h"

#include "base/text.h"
#include "script/figures.h"
#include "script/others.h"
#include "script/singing.h"

#include <algorithm>
#include <cmath>

namespace luft::script {
namespace {

std::string seconds_text(double seconds) {
    return fixed(seconds, 1) + " s";
}

/// "the recording", or "B (Mara Lindqvist)" for another performance's.
std::string recording_name(const Source& source, std::optional<project::PerformanceId> other) {
    return other ? performance_name(other_of(source, *other)->performance) : "the recording";
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
        w.words = "From " + clock_text(seconds(from)) + " of " + recording_name(source, s.other) + " on, " +
                  seconds_text(stretch.length.as_double()) + " run without a spoken word (set: at most " +
                  seconds_text(most.value()) + "); " +
                  (w.remedy ? "a phrase ends at " + clock_text(*w.remedy) + ", where a few words would fit."
                            : "no phrase ends inside it: shorten it, or speak over an instrumental bar.");
        sheet.warnings.push_back(std::move(w));
    }
}

void warn_of_share(const Source& source, CueSheet& sheet, Rational quoted_once, double share,
                   std::optional<project::PerformanceId> other) {
    const auto most = source.settings.most_quoted_share;
    if (!most || share <= *most) return;
    const double length = quoted_once.as_double() / share;
    Warning w{WarningKind::share_too_large, {}, {}, {}};
    w.other = other;
    w.words = "The programme plays " + fixed(100 * share, 0) + " % of " + recording_name(source, other) +
              " (set: at most " + fixed(100 * *most, 0) + " %); it would have to quote " +
              seconds_text(quoted_once.as_double() - *most * length) + " less: " +
              (other ? "end quotes of it earlier, or leave one out."
                     : "let stops go on later in the recording, or end it earlier.");
    sheet.warnings.push_back(std::move(w));
}

} // namespace

void warn_of_quotes(const Source& source, CueSheet& sheet) {
    warn_of_share(source, sheet, sheet.quoted_once, sheet.quoted_share, {});
    for (const QuotedOther& other : sheet.others)
        warn_of_share(source, sheet, other.quoted_once, other.quoted_share, other.performance);
    warn_of_long_quotes(source, sheet);
}

} // namespace luft::script
