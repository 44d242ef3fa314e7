// Undo that can't be forgotten: while a connection is open, every change to an edited table is recorded by
// triggers, and a change outside an Edit is refused.
#pragma once

#include "project/database.h"
#include "project/model.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::project {

/// Installs the recording triggers on this connection, one set a table of edited_tables(). They live in the
/// connection's memory, not in the file.
void install_journal(Database& database);

/// One edit: a transaction with its journal entry. Without commit() nothing has happened. An edit that
/// changed no row leaves no entry, and what was undone before it can still be redone.
class Edit {
  public:
    explicit Edit(Database& database);
    ~Edit() = default;

    /// Throws Error(busy, cannot_write …); then nothing has changed.
    void commit(const std::string& label);

  private:
    Database& database_;
    Transaction transaction_;
    std::int64_t entry_;
};

/// A writing transaction that isn't recorded: making the file, and stepping through the journal itself.
class Unrecorded {
  public:
    explicit Unrecorded(Database& database);
    void commit();

  private:
    Database& database_;
    Transaction transaction_;
};

/// Takes back the newest edit, or makes the newest undone one again; its label, none when there is none.
std::optional<std::string> undo_newest(Database& database);
std::optional<std::string> redo_next(Database& database);

std::vector<JournalEntry> journal_entries(Database& database, int most);

/// Whether the journal hangs together as edits leave it: each step belongs to an entry, each entry has steps,
/// steps stand in the order of their entries, and what was undone is the newest.
bool journal_is_whole(Database& database);

} // namespace luft::project
