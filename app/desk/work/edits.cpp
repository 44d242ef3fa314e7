#include "desk/work/edits.h"

#include "base/error.h"

#include <algorithm>
#include <cmath>
#include <variant>

namespace luft::desk {
namespace {

constexpr Seconds kMostBreath{1}, kBreath{0.3}, kLastHeard{3}, kFewSeconds{2};

project::PerformanceId shown_or_throw(const Session& session) {
    if (!session.shown())
        throw Error(Fault::bad_request, "There is no performance yet.", "Bring in a recording first.");
    return *session.shown();
}

project::Mark new_mark(const Session& session,
                       std::variant<marks::Note, marks::Breath, marks::Phrase, marks::Switch> what) {
    project::Mark mark;
    mark.performance = shown_or_throw(session);
    mark.what = std::move(what);
    return mark;
}

std::optional<marks::Register> register_before(const profile::Source& source, Seconds at) {
    std::optional<marks::Register> last;
    for (const auto& mark : source.marks)
        if (const auto* note = std::get_if<marks::Note>(&mark.what))
            if (note->span.start < at && note->sung_in) last = note->sung_in;
    return last;
}

} // namespace

Span breath_span(const profile::Source& source, Seconds at) {
    Seconds before{0}, after{1e9};
    bool inside = false;
    for (const auto& mark : source.marks)
        if (const auto* note = std::get_if<marks::Note>(&mark.what)) {
            inside = inside || note->span.contains(at);
            if (note->span.end <= at) before = std::max(before, note->span.end);
            if (note->span.start >= at) after = std::min(after, note->span.start);
        }
    if (!inside && after - before > Seconds(0.08) && after - before <= kMostBreath) return {before, after};
    if (!inside && after - at < kMostBreath / 2) return {std::max(before, after - kMostBreath / 2), after};
    return {std::max(Seconds(0), at - kBreath / 2), at + kBreath / 2};
}

const project::Mark* phrase_at(const profile::Source& source, Seconds at) {
    const project::Mark* next = nullptr;
    for (const auto& mark : source.marks) {
        if (mark.kind() != project::MarkKind::phrase || mark.span().end <= at) continue;
        if (mark.span().contains(at)) return &mark;
        if (!next || mark.span().start < next->span().start) next = &mark;
    }
    return next;
}

Span moment_span(const Session& session, Seconds playhead, bool playing) {
    if (const auto* mark = session.selected_mark())
        if (mark->span().length() > Seconds(0)) return mark->span();
    if (playing) return {std::max(Seconds(0), playhead - kLastHeard), std::max(playhead, Seconds(0.5))};
    if (const auto* phrase = phrase_at(session.source(), playhead);
        phrase && phrase->span().contains(playhead))
        return phrase->span();
    return {playhead, playhead + kFewSeconds};
}

void set_breath(Session& session, Seconds at) {
    marks::Breath breath;
    breath.span = breath_span(session.source(), at);
    breath.confidence = {1};
    const auto* phrase = phrase_at(session.source(), at);
    breath.inside_phrase = phrase && phrase->span().contains(at);
    const auto mark = new_mark(session, breath);
    session.select(session.edit([&](project::Project& project) { return project.add_mark(mark); }));
}

void set_switch(Session& session, Seconds at) {
    marks::Switch change;
    change.time = at;
    change.confidence = {1};
    change.from = register_before(session.source(), at).value_or(marks::Register::chest);
    change.to = change.from == marks::Register::chest ? marks::Register::head : marks::Register::chest;
    const auto mark = new_mark(session, change);
    session.select(session.edit([&](project::Project& project) { return project.add_mark(mark); }));
}

void make_moment(Session& session, Span span) {
    project::Moment moment;
    moment.performance = shown_or_throw(session);
    const Seconds end = session.source().performance.facts.duration;
    moment.span = {std::clamp(span.start, Seconds(0), end), std::clamp(span.end, Seconds(0), end)};
    session.select(session.edit([&](project::Project& project) { return project.add_moment(moment); }));
}

void make_stop(Session& session, Seconds at) {
    project::ScriptItem item;
    item.performance = shown_or_throw(session);
    item.kind = project::ScriptItemKind::stop;
    item.at = at;
    if (const auto* moment = session.selected_moment())
        item.moment = moment->id;
    else
        for (const auto& one : session.source().moments)
            if (one.span.contains(at)) item.moment = one.id;
    session.edit([&](project::Project& project) { project.add_script_item(item); });
}

void split_phrase(Session& session, Seconds at) {
    const auto* phrase = phrase_at(session.source(), at);
    if (!phrase || !phrase->span().contains(at))
        throw Error(Fault::bad_request, "There is no phrase at the playhead.", "Move the playhead into one.");
    const auto id = phrase->id;
    session.edit([&](project::Project& project) { project.split_phrase(id, at); });
}

void join_phrase(Session& session, Seconds at) {
    const auto* first = session.selected_mark();
    if (!first || first->kind() != project::MarkKind::phrase) first = phrase_at(session.source(), at);
    if (!first) throw Error(Fault::bad_request, "There is no phrase to join.");
    const project::Mark* next = nullptr;
    for (const auto& mark : session.source().marks)
        if (mark.kind() == project::MarkKind::phrase && mark.span().start >= first->span().end &&
            (!next || mark.span().start < next->span().start))
            next = &mark;
    if (!next) throw Error(Fault::bad_request, "No phrase follows to be joined.");
    const auto a = first->id, b = next->id;
    session.edit([&](project::Project& project) { project.join_phrases(a, b); });
}

void set_state(Session& session, project::MarkState state) {
    const auto mark = mark_of(session.selection());
    const auto moment = moment_of(session.selection());
    if (mark) session.edit([&](project::Project& project) { project.set_mark_state(*mark, state); });
    if (moment) session.edit([&](project::Project& project) { project.set_moment_state(*moment, state); });
}

void move_mark(Session& session, project::MarkId id, Span span) {
    const auto* mark = session.mark(id);
    if (!mark || mark->span() == span) return;
    if (mark->kind() == project::MarkKind::register_switch) span.end = span.start;
    session.edit([&](project::Project& project) { project.move_mark(id, span); });
    session.select(id);
}

void move_moment(Session& session, project::MomentId id, Span span) {
    const auto* moment = session.moment(id);
    if (!moment || moment->span == span) return;
    project::Moment changed = *moment;
    changed.span = span;
    session.edit([&](project::Project& project) { project.change_moment(changed); });
    session.select(id);
}

void set_verdict(Session& session, project::Verdict verdict) {
    const auto* moment = session.selected_moment();
    if (!moment || moment->verdict == verdict) return;
    project::Moment changed = *moment;
    changed.verdict = verdict;
    session.edit([&](project::Project& project) { project.change_moment(changed); });
}

void change_kind(Session& session) {
    const auto* mark = session.selected_mark();
    if (!mark) return;
    project::Mark changed = *mark;
    if (auto* breath = std::get_if<marks::Breath>(&changed.what)) {
        using marks::BreathEvidence;
        const bool heard = breath->evidence_kind == BreathEvidence::heard;
        breath->evidence_kind = heard ? BreathEvidence::inferred : BreathEvidence::heard;
        if (heard) breath->below_voice.reset();
    } else if (auto* change = std::get_if<marks::Switch>(&changed.what)) {
        std::swap(change->from, change->to);
    } else if (auto* note = std::get_if<marks::Note>(&changed.what)) {
        note->onset.kind = static_cast<marks::OnsetKind>((static_cast<int>(note->onset.kind) + 1) % 3);
        note->onset.confidence = {1};
        note->onset.evidence = "by the coach";
    } else {
        return;
    }
    session.edit([&](project::Project& project) { project.change_mark(changed); });
}

Selection neighbour(const Session& session, Seconds playhead, bool forward) {
    struct Place {
        Seconds start;
        Selection what;
    };
    std::vector<Place> all;
    for (const auto& mark : session.source().marks)
        if (mark.kind() != project::MarkKind::phrase) all.push_back({mark.span().start, mark.id});
    for (const auto& moment : session.source().moments)
        all.push_back({moment.span.start, moment.id});
    std::ranges::stable_sort(all, {}, &Place::start);
    if (all.empty()) return {};
    const auto here = std::ranges::find(all, session.selection(), &Place::what);
    if (here != all.end()) {
        if (forward) return here + 1 == all.end() ? here->what : (here + 1)->what;
        return here == all.begin() ? here->what : (here - 1)->what;
    }
    const auto after = std::ranges::lower_bound(all, playhead, {}, &Place::start);
    if (forward) return after == all.end() ? all.back().what : after->what;
    return after == all.begin() ? all.front().what : (after - 1)->what;
}

} // namespace luft::desk
