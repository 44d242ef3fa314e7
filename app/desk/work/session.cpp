#include "desk/work/session.h"

#include "base/error.h"
#include "profile/gather.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace luft::desk {
namespace {

using Damage = std::vector<std::string>;

/// Reads one part of a damaged project; what can't be read is named and left empty.
template <class Part, class Read>
void rescue(Part& part, const char* name, Damage& damage, Read read) {
    try {
        part = read();
    } catch (const Error& error) {
        if (error.fault() != Fault::unreadable) throw;
        damage.emplace_back(name);
    }
}

profile::Source rescued(const project::Project& project, const project::Performance& performance,
                        Damage& damage) {
    profile::Source source;
    source.performance = performance;
    const auto id = performance.id;
    rescue(source.piece, "the piece", damage, [&] { return project.piece(); });
    rescue(source.vocabulary, "the vocabulary", damage, [&] { return project.vocabulary(); });
    rescue(source.listening, "what was heard", damage, [&] { return project.listening(id); });
    rescue(source.curves, "the curves of pitch and level", damage, [&] { return project.curves(id); });
    rescue(source.marks, "the notes and other marks", damage, [&] { return project.marks(id); });
    rescue(source.moments, "the moments", damage, [&] { return project.moments(id); });
    rescue(source.sung_words, "the words under the line", damage, [&] { return project.sung_words(id); });
    return source;
}

/// `damage` is null for a sound project: then whatever can't be read throws.
profile::Source read_source(const project::Project& project, const project::Performance* shown,
                            Damage* damage) {
    if (shown) return damage ? rescued(project, *shown, *damage) : profile::gather(project, *shown);
    profile::Source source;
    source.piece = project.piece();
    source.vocabulary = project.vocabulary();
    return source;
}

/// In the order in which Project::marks has them.
bool comes_before(const project::Mark& a, const project::Mark& b) {
    return std::tuple(a.span().start, a.span().end, a.id) < std::tuple(b.span().start, b.span().end, b.id);
}

/// Puts a mark that was read anew among the others: in the place of what it was, and out of them when it is
/// gone, dropped or another performance's.
void put(std::vector<project::Mark>& marks, project::MarkId id, std::optional<project::Mark> now,
         project::PerformanceId shown) {
    if (now && (now->performance != shown || now->state == project::MarkState::dropped)) now.reset();
    const auto was = std::ranges::find(marks, id, &project::Mark::id);
    if (was != marks.end()) {
        if (now && now->span() == was->span()) {
            *was = *std::move(now);
            return;
        }
        marks.erase(was);
    }
    if (!now) return;
    const auto place = std::ranges::upper_bound(marks, *now, comes_before);
    marks.insert(place, *std::move(now));
}

} // namespace

void Session::create(const std::filesystem::path& file, const project::Piece& piece) {
    take(project::Project::create(file, piece), How::edit);
}

void Session::open(const std::filesystem::path& file) {
    try {
        take(project::Project::open(file, project::Access::edit), How::edit);
    } catch (const Error& error) {
        if (error.fault() != Fault::cannot_write && error.fault() != Fault::unreadable) throw;
        take(project::Project::open(file, project::Access::read),
             error.fault() == Fault::unreadable ? How::rescue : How::read);
    }
}

void Session::take(project::Project project, How how) {
    // Everything that can throw comes first, so that what was open stays open.
    std::ignore = project.take_changes();
    auto performances = project.performances();
    Damage damage;
    auto source = read_source(project, performances.empty() ? nullptr : &performances.front(),
                              how == How::rescue ? &damage : nullptr);
    project_ = std::move(project);
    read_only_ = how != How::edit;
    damaged_ = how == How::rescue;
    damage_ = std::move(damage);
    performances_ = std::move(performances);
    shown_.reset();
    if (!performances_.empty()) shown_ = performances_.front().id;
    source_ = std::move(source);
    selection_ = {};
    tell({true, true, true, true});
}

void Session::close() {
    project_.reset();
    read_only_ = damaged_ = false;
    damage_.clear();
    performances_.clear();
    shown_.reset();
    source_ = {};
    selection_ = {};
    tell({true, true, true, true});
}

const project::Project& Session::project() const {
    if (!project_) throw Error(Fault::internal, "No project is open.");
    return *project_;
}

project::Project& Session::writable() {
    if (!project_) throw Error(Fault::internal, "No project is open.");
    if (read_only_)
        throw Error(Fault::cannot_write, "This project is open to read only, so nothing was changed.",
                    "Copy it to a folder that can be written, and open the copy.");
    return *project_;
}

void Session::show(project::PerformanceId id) {
    if (shown_ == id) return;
    shown_ = id;
    selection_ = {};
    gather();
    tell({false, true, true, true});
}

void Session::reload() {
    if (!project_) return;
    const auto before = shown_;
    read_names();
    const bool there =
        shown_ && std::ranges::any_of(performances_, [&](const auto& p) { return p.id == *shown_; });
    if (!there) shown_ = performances_.empty() ? std::nullopt : std::optional(performances_.front().id);
    gather();
    drop_stale_selection();
    tell({false, shown_ != before, true, true});
}

void Session::reread() {
    read_names();
    const bool there =
        shown_ && std::ranges::any_of(performances_, [&](const auto& p) { return p.id == *shown_; });
    if (!there) return reload();
    project::Changes changed = project_->take_changes();
    changed.everything |= std::exchange(half_read_, true);
    read_changes(changed);
    half_read_ = false;
    const Selection before = selection_;
    drop_stale_selection();
    tell({false, false, true, before != selection_});
}

void Session::read_changes(const project::Changes& changed) {
    // The curves stay: only listening changes them, and an hour of them is much to read. A day has 100,000
    // marks, of which an edit changes one.
    const bool all = changed.everything;
    source_.performance = *std::ranges::find(performances_, *shown_, &project::Performance::id);
    if (all || changed.piece) source_.piece = project_->piece();
    if (all)
        source_.marks = project_->marks(*shown_);
    else
        for (const auto id : changed.marks)
            put(source_.marks, id, project_->find_mark(id), *shown_);
    if (all || changed.moments) source_.moments = project_->moments(*shown_);
    if (all || changed.script) source_.stops = profile::stops_of(*project_, *shown_);
    if (all || changed.sung_words) source_.sung_words = project_->sung_words(*shown_);
    if (all || changed.vocabulary) source_.vocabulary = project_->vocabulary();
}

void Session::read_names() {
    performances_ = project_->performances();
}

void Session::gather() {
    damage_.clear();
    // Before reading: what another program writes meanwhile is then told the next time.
    std::ignore = project_->take_changes();
    const auto at =
        std::ranges::find(performances_, shown_, [](const auto& p) { return std::optional(p.id); });
    source_ =
        read_source(*project_, at == performances_.end() ? nullptr : &*at, damaged_ ? &damage_ : nullptr);
}

std::optional<std::string> Session::undo_label() const {
    if (!project_ || read_only_) return std::nullopt;
    for (const auto& entry : project_->journal())
        if (!entry.undone) return entry.label;
    return std::nullopt;
}

std::optional<std::string> Session::redo_label() const {
    if (!project_ || read_only_) return std::nullopt;
    std::optional<std::string> next;
    for (const auto& entry : project_->journal()) { // newest first: the oldest undone one comes next
        if (!entry.undone) break;
        next = entry.label;
    }
    return next;
}

void Session::undo() {
    edit([](project::Project& project) { project.undo(); });
}

void Session::redo() {
    edit([](project::Project& project) { project.redo(); });
}

void Session::select(const Selection& selection) {
    if (selection_ == selection) return;
    selection_ = selection;
    drop_stale_selection();
    tell({false, false, false, true});
}

void Session::drop_stale_selection() {
    const auto mark_id = mark_of(selection_);
    const auto moment_id = moment_of(selection_);
    if ((mark_id && !mark(*mark_id)) || (moment_id && !moment(*moment_id))) selection_ = {};
}

const project::Mark* Session::mark(project::MarkId id) const {
    const auto it = std::ranges::find(source_.marks, id, &project::Mark::id);
    return it == source_.marks.end() ? nullptr : &*it;
}

const project::Moment* Session::moment(project::MomentId id) const {
    const auto it = std::ranges::find(source_.moments, id, &project::Moment::id);
    return it == source_.moments.end() ? nullptr : &*it;
}

const project::Mark* Session::selected_mark() const {
    const auto id = mark_of(selection_);
    return id ? mark(*id) : nullptr;
}

const project::Moment* Session::selected_moment() const {
    const auto id = moment_of(selection_);
    return id ? moment(*id) : nullptr;
}

void Session::tell(const Change& change) const {
    for (const auto& watcher : watchers_)
        watcher(change);
}

} // namespace luft::desk
