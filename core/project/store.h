// What an open project holds on to, and what the store_*.cpp files share.
#pragma once

#include "base/error.h"
#include "project/changes.h"
#include "project/database.h"
#include "project/journal.h"
#include "project/project.h"

#include <algorithm>
#include <string>
#include <string_view>

namespace luft::project {

struct Project::Store {
    std::filesystem::path file; ///< absolute
    Access access;
    mutable Database database;
    ChangeLog changes = {};

    [[nodiscard]] std::filesystem::path folder() const { return file.parent_path(); }

    /// Begins an edit. Throws Error(cannot_write) in a project that was opened for reading.
    [[nodiscard]] Edit edit() {
        expect_writable();
        return Edit(database);
    }
    void expect_writable() const {
        if (access == Access::read)
            throw Error(Fault::cannot_write, "The project was opened for reading only.",
                        "Open it for editing to change it.");
    }
    /// Everything read during its life is of one state.
    [[nodiscard]] Transaction reading() const { return {database, Transaction::Kind::reading}; }
};

/// Throws Error(bad_request) with that sentence and advice when `fine` is false.
inline void demand(bool fine, const std::string& otherwise, const std::string& advice = {}) {
    if (!fine) throw Error(Fault::bad_request, otherwise, advice);
}

inline bool is_blank(std::string_view text) {
    return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

/// Throws Error(not_found) when there is no performance of that id; else its label.
std::string label_of(Database& database, PerformanceId id);

/// Throws Error(bad_request) unless the span lies at or after 0 and ends after its start (or at it, when
/// `may_be_empty`). `of` names it in the message: "the breath".
void demand_span(Span span, const std::string& of, bool may_be_empty = false);

} // namespace luft::project
