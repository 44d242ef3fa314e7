// The project that is open, the performance that is shown, and what is selected in it: one place that all
// parts of the window look at.
#pragma once

#include "desk/work/selection.h"
#include "profile/profile.h"
#include "project/project.h"

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace luft::desk {

/// For one thread. Everything that changes the project goes through `edit`, so that whoever watches sees it.
class Session {
  public:
    /// What has changed; watchers look at what concerns them.
    struct Change {
        bool project = false;   ///< another project, or none
        bool shown = false;     ///< another performance
        bool contents = false;  ///< marks, moments, names; after `reload` the curves too
        bool selection = false; ///< what is selected
    };
    using Watcher = std::function<void(const Change&)>;

    void create(const std::filesystem::path& file, const project::Piece& piece);
    /// Opens to edit; to read when it can't be written, or is of an older version that can't be brought up to
    /// date, or is damaged: then `damage` names what couldn't be read, and the rest is shown. Throws as
    /// Project::open, also when the damage leaves nothing to show; then what was open stays open.
    void open(const std::filesystem::path& file);
    void close();

    [[nodiscard]] bool is_open() const { return project_.has_value(); }
    [[nodiscard]] bool read_only() const { return read_only_; }
    /// What couldn't be read of the performance that is shown: "the notes and other marks". Empty when sound.
    [[nodiscard]] const std::vector<std::string>& damage() const { return damage_; }
    /// Throws Error(internal) when nothing is open.
    [[nodiscard]] const project::Project& project() const;

    [[nodiscard]] const std::vector<project::Performance>& performances() const { return performances_; }
    [[nodiscard]] bool shows_performance() const { return shown_.has_value(); }
    [[nodiscard]] std::optional<project::PerformanceId> shown() const { return shown_; }
    void show(project::PerformanceId id);

    /// The performance that is shown, whole; empty when there is none. Valid until the next change.
    [[nodiscard]] const profile::Source& source() const { return source_; }

    /// Changes the project, rereads it and tells the watchers. Throws what `what` throws; then nothing has
    /// changed. Throws Error(cannot_write) in a project that is open to read only.
    template <class What>
    auto edit(What what) {
        project::Project& project = writable();
        if constexpr (std::is_void_v<decltype(what(project))>) {
            what(project);
            reread();
        } else {
            auto result = what(project);
            reread();
            return result;
        }
    }

    [[nodiscard]] std::optional<std::string> undo_label() const; ///< what undo would take back
    [[nodiscard]] std::optional<std::string> redo_label() const;
    void undo();
    void redo();

    /// Reads everything again, curves too: another program, or a worker of ours, has changed the file.
    void reload();

    [[nodiscard]] const Selection& selection() const { return selection_; }
    void select(const Selection& selection);
    [[nodiscard]] const project::Mark* selected_mark() const;
    [[nodiscard]] const project::Moment* selected_moment() const;
    [[nodiscard]] const project::Mark* mark(project::MarkId id) const;
    [[nodiscard]] const project::Moment* moment(project::MomentId id) const;

    void watch(Watcher watcher) { watchers_.push_back(std::move(watcher)); }

  private:
    project::Project& writable();
    enum class How { edit, read, rescue };
    void take(project::Project project, How how);
    void reread();
    void read_changes(const project::Changes& changed);
    void read_names();
    void gather();
    void tell(const Change& change) const;
    void drop_stale_selection();

    std::optional<project::Project> project_;
    bool read_only_ = false;
    bool damaged_ = false;
    std::vector<std::string> damage_;
    std::vector<project::Performance> performances_;
    std::optional<project::PerformanceId> shown_;
    profile::Source source_;
    bool half_read_ = false; ///< rereading after an edit has failed on the way
    Selection selection_;
    std::vector<Watcher> watchers_;
};

} // namespace luft::desk
