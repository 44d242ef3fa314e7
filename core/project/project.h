// The project file: everything the coach has, in one SQLite file. See docs/project-file.md for the schema.
#pragma once

#include "base/bytes.h"
#include "base/progress.h"
#include "project/model.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace luft::project {

enum class Access {
    edit, ///< read and write; an older file is migrated (after a backup copy beside it)
    read, ///< nothing is written, not even a migration; an older file that needs one is refused. Only an edit
          ///< that was cut off by a crash is rolled back, where the file can be written
};

/// What `check` found. Empty = sound.
struct Damage {
    std::string what;
};

/// What is another than it was when somebody looked last.
struct Changes {
    bool everything = false; ///< look at all of it: another program has written, or too much is another
    bool piece = false, vocabulary = false, moments = false, sung_words = false, script = false;
    std::vector<MarkId> marks; ///< added, changed or gone, of any performance
};

/// An open project. Every edit is one transaction that is on disk when the call returns, with its journal
/// entry. All calls throw Error (not_found for an unknown id, and for edits of a file that is no longer where
/// it was opened; busy, cannot_write, unreadable …); a call that throws has changed nothing. Not for use from
/// several threads at once; several programs may have one project open.
class Project {
  public:
    /// Makes a new file with the default vocabulary. Throws Error(cannot_write) when something exists there.
    static Project create(const std::filesystem::path& file, const Piece& piece);
    /// Throws Error(not_found), Error(unreadable) for what isn't a project, Error(newer) for a newer
    /// version's.
    static Project open(const std::filesystem::path& file, Access access = Access::edit);

    Project(Project&&) noexcept;
    Project& operator=(Project&&) noexcept;
    ~Project();

    [[nodiscard]] const std::filesystem::path& file() const;
    /// All of it as it is now, history included, into a new file; linked recordings stay linked where they
    /// are. Also when the file that is open has gone from its place, from where every edit throws
    /// Error(not_found): then this is what is left of it. Throws Error(cannot_write) when something exists
    /// there.
    void save_copy(const std::filesystem::path& file) const;

    // --- piece and settings
    [[nodiscard]] Piece piece() const;
    void set_piece(const Piece& piece);
    [[nodiscard]] ScriptSettings script_settings() const;
    void set_script_settings(const ScriptSettings& settings);

    // --- vocabulary and drill book
    [[nodiscard]] vocabulary::Vocabulary vocabulary() const;
    void add_facet(const vocabulary::Facet& facet); ///< bad_request when the key exists or isn't a key
    void add_shade(const std::string& facet, const vocabulary::Shade& shade);
    void put_drill(const vocabulary::Drill& drill); ///< adds, or replaces the drill of that key

    // --- performances
    [[nodiscard]] std::vector<Performance> performances() const; ///< in order of adding
    /// The performance of that label; the only one when `label` is empty. not_found / bad_request otherwise.
    [[nodiscard]] Performance performance(const std::string& label) const;
    /// Links `media` (path made relative to the project's folder), or carries its bytes. Computes size and
    /// fingerprint. `details` gives label (made up when empty), performer, source, permission and facts.
    PerformanceId add_performance(const std::filesystem::path& media, bool carry, const Performance& details,
                                  const Progress& progress = {});
    void set_performance_notes(PerformanceId id, const std::string& performer, const std::string& source,
                               const std::string& permission);
    void remove_performance(PerformanceId id);

    /// The recording's bytes: carried ones, or the linked file after its size is checked (and its
    /// fingerprint, when `verify`). A file that has moved is looked for by size and fingerprint in the
    /// project's folder and in `search`. Throws Error(not_found) or Error(changed).
    [[nodiscard]] std::unique_ptr<ByteSource> media(const Performance& performance, bool verify = false,
                                                    const std::vector<std::filesystem::path>& search = {},
                                                    const Progress& progress = {}) const;
    /// Links the performance to another place of the same recording. Throws Error(changed) when the
    /// fingerprint differs.
    void relink(PerformanceId id, const std::filesystem::path& media, const Progress& progress = {});

    // --- detection
    /// Stores an analysis: curves and summary replaced; untouched proposals replaced; whatever the coach
    /// kept, dropped, moved or added stays, and a new proposal that means the same thing as one of those is
    /// left out (same_mark.h says when). The marks are one edit; curves and summary aren't taken back by
    /// undo.
    void store_listening(PerformanceId id, const marks::Analysis& analysis);
    [[nodiscard]] std::optional<Listening> listening(PerformanceId id) const; ///< none before detection
    [[nodiscard]] voice::Curves curves(PerformanceId id) const;               ///< empty before detection

    // --- marks
    /// Marks in order of time; dropped ones only when asked for.
    [[nodiscard]] std::vector<Mark> marks(PerformanceId id, bool with_dropped = false) const;
    [[nodiscard]] Mark mark(MarkId id) const;
    /// The same; none when there is no such mark.
    [[nodiscard]] std::optional<Mark> find_mark(MarkId id) const;
    MarkId add_mark(const Mark& mark); ///< by the coach: origin coach, state kept
    void set_mark_state(MarkId id, MarkState state);
    void move_mark(MarkId id, Span span); ///< also keeps it
    void change_mark(const Mark& mark);   ///< the kind's own values; also keeps it
    void split_phrase(MarkId id, Seconds at);
    void join_phrases(MarkId first, MarkId second);

    // --- moments
    [[nodiscard]] std::vector<Moment> moments(PerformanceId id, bool with_dropped = false) const;
    [[nodiscard]] Moment moment(MomentId id) const;
    MomentId add_moment(const Moment& moment); ///< bad_request for unknown shades or drill, or an empty span
    void change_moment(const Moment& moment);  ///< everything but performance and origin; keeps a proposal
    void set_moment_state(MomentId id, MarkState state);
    /// Replaces untouched proposed moments; those that the coach kept, dropped or changed stay, and proposals
    /// that mean the same (same shades, overlapping span) are left out. Returns how many were stored.
    int propose_moments(PerformanceId id, const std::vector<Moment>& proposals);

    // --- two performances
    /// The coach's pins between two performances, in order of a's time, `Pin::a` being a's.
    [[nodiscard]] std::vector<Pin> pins(PerformanceId a, PerformanceId b) const;
    /// Replaces them all in one edit. Throws Error(bad_request) when two cross or share a time, one lies
    /// before 0:00, or a and b are the same.
    void set_pins(PerformanceId a, PerformanceId b, const std::vector<Pin>& pins);

    // --- sung words
    /// The words under the line, in their order, which is that of time as well.
    [[nodiscard]] std::vector<SungWord> sung_words(PerformanceId id) const;
    /// Replaces them all in one edit; a word whose id is known keeps its row. Throws Error(bad_request) for
    /// words out of order, at no time, empty or with white space.
    void set_sung_words(PerformanceId id, const std::vector<SungWord>& words);
    /// The coach puts a word there. The words that the program has put are spread anew around it
    /// (spread_words.h), as long as the words are still those of the piece. Throws Error(bad_request) when
    /// it would pass another one that the coach has placed.
    void move_sung_word(SungWordId id, Seconds at);

    // --- script
    [[nodiscard]] std::vector<ScriptItem> script(PerformanceId id) const; ///< in order
    /// Replaces the script by a new draft in one edit. Items are matched to the stored ones by id (0 = new);
    /// stored items that are missing are removed, except those with `own_words`, which are always kept, with
    /// their text and settings as stored.
    void store_script(PerformanceId id, const std::vector<ScriptItem>& items);
    ScriptItemId
    add_script_item(const ScriptItem& item); ///< position 0 = by media time; marks nothing as own words
    /// Words that change lose their rehearsed time, unless another one comes with them.
    void change_script_item(const ScriptItem& item);
    /// Changes several items, and adds those with id 0, in one edit of that name. Position 0 = by media time.
    void change_script(PerformanceId id, const std::vector<ScriptItem>& changed, const std::string& label);
    void remove_script_item(ScriptItemId id);
    /// The measured talk times of a rehearsal, as one edit; none = the estimate by words a minute again.
    /// Throws Error(not_found) for an unknown item and Error(bad_request) for what isn't a time; then none is
    /// stored.
    void set_rehearsed(const std::vector<std::pair<ScriptItemId, std::optional<Seconds>>>& times);

    // --- journal
    /// Takes back the newest edit that isn't undone; its label, or none when there is nothing to undo.
    std::optional<std::string> undo();
    std::optional<std::string> redo();
    [[nodiscard]] std::vector<JournalEntry> journal(int most = 50) const; ///< newest first

    /// What this open project's edits, undo and redo have changed since the last call, so that whoever keeps
    /// a copy needn't read everything again; the first call says `everything`. For one keeper. Performances,
    /// curves and pins aren't told.
    [[nodiscard]] Changes take_changes();

    // --- health
    /// SQLite's own integrity check, foreign keys, value ranges, blob lengths, and carried media against its
    /// fingerprint.
    [[nodiscard]] std::vector<Damage> check(const Progress& progress = {}) const;

  private:
    struct Store;
    explicit Project(std::unique_ptr<Store> store);
    std::unique_ptr<Store> store_;
};

} // namespace luft::project
