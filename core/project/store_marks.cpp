// The coach's work on marks.
#include "base/text.h"
#include "project/mark_rows.h"
#include "project/store.h"

namespace luft::project {
namespace {

std::string name_of(MarkKind kind) {
    switch (kind) {
    case MarkKind::note:
        return "note";
    case MarkKind::breath:
        return "breath";
    case MarkKind::phrase:
        return "phrase";
    case MarkKind::register_switch:
        return "register switch";
    }
    return "mark";
}

/// "breath at 0:12.3"
std::string place_of(const Mark& mark) {
    return name_of(mark.kind()) + " at " + clock_text(mark.span().start);
}

void demand_mark(const Mark& mark) {
    demand_span(mark.span(), "the " + name_of(mark.kind()), mark.kind() == MarkKind::register_switch);
    demand(mark.confidence().value >= 0 && mark.confidence().value <= 1,
           "A mark's confidence lies between 0 and 1.");
}

void set_span(Mark& mark, Span span) {
    std::visit(
        [&](auto& m) {
            if constexpr (requires { m.span; })
                m.span = span;
            else
                m.time = span.start;
        },
        mark.what);
    if (auto* phrase = std::get_if<marks::Phrase>(&mark.what)) // measured over other notes than it has now
        phrase->level.reset(), phrase->dynamic.reset();
}

Mark phrase_of_coach(PerformanceId performance, Span span) {
    return {{}, performance, MarkState::kept, Origin::coach, marks::Phrase{span, Confidence{1}, ""}};
}

Mark read_phrase(Database& database, MarkId id) {
    Mark mark = read_mark_row(database, id).mark;
    demand(mark.kind() == MarkKind::phrase, "The " + place_of(mark) + " is not a phrase.",
           "Choose a phrase.");
    return mark;
}

} // namespace

std::vector<Mark> Project::marks(PerformanceId id, bool with_dropped) const {
    const Transaction reading = store_->reading();
    label_of(store_->database, id);
    std::vector<Mark> all;
    for_each_mark_row(store_->database, id, [&](MarkRow&& row) {
        if (with_dropped || row.mark.state != MarkState::dropped) all.push_back(std::move(row.mark));
    });
    return all;
}

Mark Project::mark(MarkId id) const {
    return read_mark_row(store_->database, id).mark;
}

std::optional<Mark> Project::find_mark(MarkId id) const {
    if (auto row = find_mark_row(store_->database, id)) return std::move(row->mark);
    return std::nullopt;
}

MarkId Project::add_mark(const Mark& given) {
    Mark mark = given;
    mark.state = MarkState::kept;
    mark.origin = Origin::coach;
    std::visit([](auto& m) { m.confidence = Confidence{1}; }, mark.what);
    demand_mark(mark);
    Edit edit = store_->edit();
    label_of(store_->database, mark.performance);
    const MarkId id = insert_mark(store_->database, {mark, std::nullopt});
    edit.commit("add " + place_of(mark));
    return id;
}

void Project::set_mark_state(MarkId id, MarkState state) {
    Edit edit = store_->edit();
    Mark mark = read_mark_row(store_->database, id).mark;
    mark.state = state;
    update_mark(store_->database, mark);
    const std::string place = place_of(mark);
    edit.commit(state == MarkState::kept      ? "keep " + place
                : state == MarkState::dropped ? "drop " + place
                                              : "leave " + place + " open");
}

void Project::move_mark(MarkId id, Span span) {
    Edit edit = store_->edit();
    Mark mark = read_mark_row(store_->database, id).mark;
    const std::string before = place_of(mark);
    set_span(mark, span);
    demand_mark(mark);
    mark.state = MarkState::kept;
    update_mark(store_->database, mark);
    edit.commit("move " + before + " to " + clock_text(span.start));
}

void Project::change_mark(const Mark& changed) {
    demand_mark(changed);
    Edit edit = store_->edit();
    Mark mark = read_mark_row(store_->database, changed.id).mark;
    demand(mark.kind() == changed.kind(), "The " + place_of(mark) + " can't become another kind of mark.",
           "Drop it, and add a new one.");
    mark.what = changed.what;
    mark.state = MarkState::kept;
    update_mark(store_->database, mark);
    edit.commit("change " + place_of(mark));
}

void Project::split_phrase(MarkId id, Seconds at) {
    Edit edit = store_->edit();
    Mark first = read_phrase(store_->database, id);
    const Span whole = first.span();
    demand(whole.start < at && at < whole.end, "The " + place_of(first) + " can't be split there.",
           "Choose a place inside it.");
    set_span(first, {whole.start, at});
    first.state = MarkState::kept;
    update_mark(store_->database, first);
    insert_mark(store_->database, {phrase_of_coach(first.performance, {at, whole.end}), std::nullopt});
    edit.commit("split " + place_of(first) + " at " + clock_text(at));
}

void Project::join_phrases(MarkId one, MarkId other) {
    demand(one != other, "A phrase can't be joined with itself.", "Choose two phrases.");
    Edit edit = store_->edit();
    Database& database = store_->database;
    Mark first = read_phrase(database, one);
    Mark second = read_phrase(database, other);
    demand(first.performance == second.performance, "The two phrases are of different performances.",
           "Choose two phrases that follow each other.");
    if (second.span().start < first.span().start) std::swap(first, second);
    for (const MarkRow& row : read_mark_rows(database, first.performance)) {
        const Mark& m = row.mark;
        const bool between = m.kind() == MarkKind::phrase && m.state != MarkState::dropped &&
                             m.id != first.id && m.id != second.id && m.span().start > first.span().start &&
                             m.span().start < second.span().start;
        demand(!between, "Another phrase lies between the two.", "Join it with the first one before.");
    }
    set_span(first, {first.span().start, std::max(first.span().end, second.span().end)});
    first.state = MarkState::kept;
    update_mark(database, first);
    delete_mark(database, second.id);
    edit.commit("join " + place_of(first) + " with the next one");
}

} // namespace luft::project
