#include "desk/work/session.h"

#include "base/error.h"
#include "profile/gather.h"

#include <algorithm>
#include <utility>

namespace luft::desk {

void Session::create(const std::filesystem::path& file, const project::Piece& piece) {
    take(project::Project::create(file, piece), false);
}

void Session::open(const std::filesystem::path& file) {
    try {
        take(project::Project::open(file, project::Access::edit), false);
    } catch (const Error& error) {
        if (error.fault() != Fault::cannot_write) throw;
        take(project::Project::open(file, project::Access::read), true);
    }
}

void Session::take(project::Project project, bool read_only) {
    project_ = std::move(project);
    read_only_ = read_only;
    shown_.reset();
    source_ = {};
    selection_ = {};
    read_names();
    if (!performances_.empty()) shown_ = performances_.front().id;
    gather();
    tell({true, true, true, true});
}

void Session::close() {
    project_.reset();
    read_only_ = false;
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
    read_names();
    const bool there =
        shown_ && std::ranges::any_of(performances_, [&](const auto& p) { return p.id == *shown_; });
    if (!there) shown_ = performances_.empty() ? std::nullopt : std::optional(performances_.front().id);
    gather();
    drop_stale_selection();
    tell({false, true, true, true});
}

void Session::reread() {
    read_names();
    const bool there =
        shown_ && std::ranges::any_of(performances_, [&](const auto& p) { return p.id == *shown_; });
    if (!there) return reload();
    // The curves stay: only listening changes them, and an hour of them is much to read.
    source_.piece = project_->piece();
    source_.performance = *std::ranges::find(performances_, *shown_, &project::Performance::id);
    source_.marks = project_->marks(*shown_);
    source_.moments = project_->moments(*shown_);
    source_.vocabulary = project_->vocabulary();
    const Selection before = selection_;
    drop_stale_selection();
    tell({false, false, true, before != selection_});
}

void Session::read_names() {
    performances_ = project_->performances();
}

void Session::gather() {
    source_ = {};
    if (!shown_) {
        if (project_) {
            source_.piece = project_->piece();
            source_.vocabulary = project_->vocabulary();
        }
        return;
    }
    source_ =
        profile::gather(*project_, *std::ranges::find(performances_, *shown_, &project::Performance::id));
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
