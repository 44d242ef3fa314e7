#include "project/database.h"

#include "base/error.h"
#include "base/text.h"

#include <sqlite3.h>

#include <cmath>

namespace luft::project {
namespace {

/// How long a call waits for another program to finish its edit before it throws Error(busy).
constexpr int kBusyMilliseconds = 2000;

/// For a file that is thrown away unless it becomes whole.
constexpr const char* kNothingBeside = "PRAGMA journal_mode = MEMORY; PRAGMA synchronous = OFF;";

[[noreturn]] void fail_gone() {
    throw Error(Fault::not_found,
                "The project file isn't where it was opened: it was moved, removed or replaced meanwhile.",
                "Nothing was changed. Put it back, or open it where it is now; a window that has it open can "
                "save a copy.");
}

[[noreturn]] void fail(sqlite3* connection, int code) {
    if (code == SQLITE_READONLY_DBMOVED) fail_gone();
    const std::string reason = connection ? sqlite3_errmsg(connection) : sqlite3_errstr(code);
    switch (code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        throw Error(Fault::busy, "Another program is just writing to the project.",
                    "Wait until it has finished, and try again.");
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        throw Error(Fault::unreadable, "The project file is damaged: " + reason + ".",
                    "Save what can be read of it: luftpause check FILE --rescue NEW.luft");
    case SQLITE_FULL:
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_CANTOPEN:
        throw Error(Fault::cannot_write, "The project file can't be written: " + reason + ".",
                    "Make room on the disk, or put the project where you may write.");
    case SQLITE_IOERR:
        if (code == SQLITE_IOERR_READ || code == SQLITE_IOERR_SHORT_READ)
            throw Error(Fault::unreadable, "The project file can't be read: " + reason + ".",
                        "Check the disk that it is on.");
        throw Error(Fault::cannot_write, "The project file can't be written: " + reason + ".",
                    "Make room on the disk, and check that it is sound.");
    default:
        throw Error(Fault::internal, "The project file refused an operation: " + reason + ".");
    }
}

void expect_ok(sqlite3* connection, int code) {
    if (code != SQLITE_OK) fail(connection, sqlite3_extended_errcode(connection));
}

} // namespace

void Statement::Finalize::operator()(sqlite3_stmt* statement) const {
    sqlite3_finalize(statement);
}

Statement::Statement(Database& database, std::string_view sql) : connection_(database.connection_.get()) {
    sqlite3_stmt* made = nullptr;
    const int code =
        sqlite3_prepare_v2(connection_, sql.data(), static_cast<int>(sql.size()), &made, nullptr);
    statement_.reset(made);
    expect_ok(connection_, code);
}

void Statement::bind_at(int index, std::nullptr_t) {
    expect_ok(connection_, sqlite3_bind_null(statement_.get(), index));
}

void Statement::bind_at(int index, std::int64_t value) {
    expect_ok(connection_, sqlite3_bind_int64(statement_.get(), index, value));
}

void Statement::bind_at(int index, double value) {
    if (!std::isfinite(value))
        throw Error(Fault::bad_request, "A value to be stored is not a number.",
                    "Give a finite number, or leave the value out.");
    expect_ok(connection_, sqlite3_bind_double(statement_.get(), index, value));
}

void Statement::bind_at(int index, std::string_view text) {
    std::string clean = valid_utf8(text);
    std::erase(clean, '\0'); // SQLite's own functions would end the text there
    expect_ok(connection_, sqlite3_bind_text64(statement_.get(), index, clean.data(), clean.size(),
                                               SQLITE_TRANSIENT, SQLITE_UTF8));
}

void Statement::bind_at(int index, std::span<const std::byte> blob) {
    if (blob.empty())
        expect_ok(connection_, sqlite3_bind_zeroblob(statement_.get(), index, 0));
    else
        expect_ok(connection_,
                  sqlite3_bind_blob64(statement_.get(), index, blob.data(), blob.size(), SQLITE_TRANSIENT));
}

void Statement::bind_column(int index, const Statement& row, int column) {
    expect_ok(connection_, sqlite3_bind_value(statement_.get(), index,
                                              sqlite3_column_value(row.statement_.get(), column)));
}

bool Statement::step() {
    const int code = sqlite3_step(statement_.get());
    if (code == SQLITE_ROW) return true;
    if (code == SQLITE_DONE) return false;
    const int extended = sqlite3_extended_errcode(connection_);
    fail(connection_, extended);
}

void Statement::run() {
    try {
        while (step()) {
        }
    } catch (...) {
        reset();
        throw;
    }
    reset();
}

void Statement::reset() {
    sqlite3_reset(statement_.get());
    sqlite3_clear_bindings(statement_.get());
}

bool Statement::is_null(int column) const {
    return sqlite3_column_type(statement_.get(), column) == SQLITE_NULL;
}

std::int64_t Statement::integer(int column) const {
    return sqlite3_column_int64(statement_.get(), column);
}

double Statement::real(int column) const {
    return sqlite3_column_double(statement_.get(), column);
}

std::string Statement::text(int column) const {
    const auto* chars = reinterpret_cast<const char*>(sqlite3_column_text(statement_.get(), column));
    return chars
               ? std::string(chars, static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column)))
               : std::string();
}

std::span<const std::byte> Statement::blob(int column) const {
    const auto* bytes = static_cast<const std::byte*>(sqlite3_column_blob(statement_.get(), column));
    return {bytes, bytes ? static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column)) : 0};
}

void Database::Close::operator()(sqlite3* connection) const {
    sqlite3_close_v2(connection);
}

Database::Database(const std::filesystem::path& file, Mode mode) {
    sqlite3* made = nullptr;
    const int flags = mode == Mode::read ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE;
    const int code = sqlite3_open_v2(file.c_str(), &made, flags | SQLITE_OPEN_EXRESCODE, nullptr);
    connection_.reset(made);
    if (code != SQLITE_OK)
        throw Error(Fault::unreadable,
                    "'" + file.string() + "' can't be opened: " + sqlite3_errstr(code) + ".",
                    "Check the path and who may read the file.");
    if (mode != Mode::read && sqlite3_db_readonly(made, "main") == 1)
        throw Error(Fault::cannot_write, "'" + file.string() + "' is read-only.",
                    "Copy it to a folder where you may write, and open the copy.");
    sqlite3_busy_timeout(made, kBusyMilliseconds);
    // A project comes from anywhere: nothing in its schema may reach further than its own tables.
    sqlite3_db_config(made, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(made, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    sqlite3_limit(made, SQLITE_LIMIT_ATTACHED, 0);
    script("PRAGMA foreign_keys = ON; PRAGMA cell_size_check = ON; PRAGMA temp_store = MEMORY;"
           "PRAGMA synchronous = EXTRA;");
    if (mode == Mode::fill) script(kNothingBeside);
}

Statement& Database::prepared(std::string_view sql) {
    constexpr std::size_t kMost = 300; // more than this folder has; only a bound
    if (const auto found = prepared_.find(sql); found != prepared_.end()) return found->second;
    if (prepared_.size() >= kMost) prepared_.clear();
    return prepared_.emplace(sql, Statement(*this, sql)).first->second;
}

void Database::script(const std::string& sql) {
    expect_ok(connection_.get(), sqlite3_exec(connection_.get(), sql.c_str(), nullptr, nullptr, nullptr));
}

std::int64_t Database::last_id() const {
    return sqlite3_last_insert_rowid(connection_.get());
}

int Database::changes() const {
    return sqlite3_changes(connection_.get());
}

bool Database::in_transaction() const {
    return sqlite3_get_autocommit(connection_.get()) == 0;
}

void Database::on_row_written(Told told) {
    told_ = std::make_unique<Told>(std::move(told));
    // Not called for tables without row ids, which only the journal has.
    sqlite3_update_hook(
        connection_.get(),
        [](void* given, int, const char*, const char* table, sqlite3_int64 row) {
            (*static_cast<const Told*>(given))(table, row);
        },
        told_.get());
}

void Database::copy_to(const std::filesystem::path& file) {
    sqlite3* made = nullptr;
    int code = sqlite3_open_v2(file.c_str(), &made, SQLITE_OPEN_READWRITE, nullptr);
    const std::unique_ptr<sqlite3, Close> target(made);
    if (code == SQLITE_OK) code = sqlite3_exec(made, kNothingBeside, nullptr, nullptr, nullptr);
    if (code == SQLITE_OK) {
        constexpr int kAllPages = -1;
        if (sqlite3_backup* backup = sqlite3_backup_init(made, "main", connection_.get(), "main")) {
            // Of its end only the step knows: the finish calls a copy fine that it had to wait for in vain.
            const int copied = sqlite3_backup_step(backup, kAllPages);
            code = sqlite3_backup_finish(backup);
            if (code == SQLITE_OK && copied != SQLITE_DONE) code = copied;
        } else {
            code = sqlite3_errcode(made);
        }
    }
    if (code == SQLITE_BUSY || code == SQLITE_LOCKED) fail(nullptr, code);
    if (code != SQLITE_OK)
        throw Error(Fault::cannot_write,
                    "No copy could be written to '" + file.string() + "': " + sqlite3_errstr(code) + ".",
                    "Make room there, or put the project where you may write.");
}

void Database::expect_in_place() {
    int moved = 0;
    if (sqlite3_file_control(connection_.get(), "main", SQLITE_FCNTL_HAS_MOVED, &moved) == SQLITE_OK &&
        moved != 0)
        fail_gone();
}

Transaction::Transaction(Database& database, Kind kind) : database_(database) {
    database_.script(kind == Kind::writing ? "BEGIN IMMEDIATE" : "BEGIN");
}

Transaction::~Transaction() {
    if (!database_.in_transaction()) return;
    try {
        database_.script("ROLLBACK");
    } catch (const Error&) {
        // The journal stays beside the file, and the next reader rolls it back.
    }
}

void Transaction::commit() {
    database_.script("COMMIT");
}

} // namespace luft::project
