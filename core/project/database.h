// A thin skin over SQLite: owns what must be closed, and turns every failure into an Error. The only folder
// that knows SQLite is this one.
#pragma once

#include "base/units.h"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

struct sqlite3;
struct sqlite3_stmt;

namespace luft::project {

class Database;

/// One SQL statement, prepared. Parameters are numbered from 1, columns from 0, as in SQLite.
class Statement {
  public:
    Statement(Database& database, std::string_view sql);

    /// Binds the values to the parameters in order. Text becomes valid UTF-8 without NUL on the way in, so
    /// that none of another kind can ever be stored.
    template <class... Values>
    Statement& bind(const Values&... values) {
        int index = 0;
        (bind_at(++index, values), ...);
        return *this;
    }

    void bind_at(int index, std::nullptr_t);
    void bind_at(int index, std::int64_t value);
    void bind_at(int index, int value) { bind_at(index, static_cast<std::int64_t>(value)); }
    void bind_at(int index, bool value) { bind_at(index, static_cast<std::int64_t>(value)); }
    void bind_at(int index, double value); ///< throws Error(bad_request) for what is not a finite number
    void bind_at(int index, std::string_view text);
    void bind_at(int index, const std::string& text) { bind_at(index, std::string_view(text)); }
    void bind_at(int index, const char* text) { bind_at(index, std::string_view(text)); }
    void bind_at(int index, std::span<const std::byte> blob);
    template <class Unit>
    void bind_at(int index, Quantity<Unit> value) {
        bind_at(index, value.value());
    }
    template <class Value>
    void bind_at(int index, const std::optional<Value>& value) {
        if (value)
            bind_at(index, *value);
        else
            bind_at(index, nullptr);
    }
    /// Hands a column of another statement's row on as it is, whatever its type.
    void bind_column(int index, const Statement& row, int column);

    /// To the next row; false after the last one.
    bool step();
    /// Runs to the end, and makes the statement ready to be bound again, also when it throws.
    void run();
    void reset();

    [[nodiscard]] bool is_null(int column) const;
    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] bool truth(int column) const { return integer(column) != 0; }
    [[nodiscard]] double real(int column) const;
    [[nodiscard]] std::string text(int column) const;
    /// Valid until the next step.
    [[nodiscard]] std::span<const std::byte> blob(int column) const;

    template <class Unit>
    [[nodiscard]] Unit unit(int column) const {
        return Unit(real(column));
    }
    template <class Unit>
    [[nodiscard]] std::optional<Unit> maybe(int column) const {
        if (is_null(column)) return std::nullopt;
        return Unit(real(column));
    }

  private:
    struct Finalize {
        void operator()(sqlite3_stmt* statement) const;
    };
    sqlite3* connection_;
    std::unique_ptr<sqlite3_stmt, Finalize> statement_;
};

/// One connection. Rollback journal, synchronous EXTRA: what COMMIT has returned from is on disk, and between
/// transactions the project is exactly one file.
class Database {
  public:
    enum class Mode {
        edit,
        read,
        fill, ///< a file that nobody knows yet (new_file.h): nothing beside it, nothing synced
    };

    /// The file must exist. Throws Error(unreadable), Error(cannot_write) for a read-only file unless it is
    /// to be read.
    Database(const std::filesystem::path& file, Mode mode);

    [[nodiscard]] Statement prepare(std::string_view sql) { return {*this, sql}; }
    template <class... Values>
    Statement query(std::string_view sql, const Values&... values) {
        Statement statement(*this, sql);
        statement.bind(values...);
        return statement;
    }
    /// Runs one statement to its end. It stays prepared for the next time.
    template <class... Values>
    void run(std::string_view sql, const Values&... values) {
        prepared(sql).bind(values...).run();
    }
    /// A statement that stays prepared, for whoever runs it to its end at once.
    Statement& prepared(std::string_view sql);
    /// Runs several statements without parameters.
    void script(const std::string& sql);

    /// First column of the first row as a whole number; 0 without a row.
    template <class... Values>
    [[nodiscard]] std::int64_t number(std::string_view sql, const Values&... values) {
        Statement statement = query(sql, values...);
        return statement.step() ? statement.integer(0) : 0;
    }

    [[nodiscard]] std::int64_t last_id() const; ///< row id of the newest insert
    [[nodiscard]] int changes() const;          ///< rows touched by the newest statement
    [[nodiscard]] bool in_transaction() const;

    /// From now on it is told every row that this connection writes. It must not use the database, nor throw.
    void on_row_written(std::function<void(std::string_view table, std::int64_t row)> told);

    /// Copies the whole database, as it is now, into a file that nobody knows yet (new_file.h). Throws
    /// Error(cannot_write), Error(busy) when another program doesn't let it be read.
    void copy_to(const std::filesystem::path& file);
    /// Throws Error(not_found) when the file isn't the one under its name any more: what is written into it
    /// then is lost when the project is closed.
    void expect_in_place();

  private:
    friend class Statement;
    struct Close {
        void operator()(sqlite3* connection) const;
    };
    using Told = std::function<void(std::string_view, std::int64_t)>;
    std::unique_ptr<Told> told_; ///< before the connection: it must outlive it
    std::unique_ptr<sqlite3, Close> connection_;
    std::map<std::string, Statement, std::less<>> prepared_; ///< after the connection: closed before it
};

/// Rolls back at the end of its life unless committed.
class Transaction {
  public:
    enum class Kind {
        reading, ///< everything read until the end is of one state
        writing, ///< nobody else writes until the end
    };

    Transaction(Database& database, Kind kind);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

    void commit();

  private:
    Database& database_;
};

} // namespace luft::project
