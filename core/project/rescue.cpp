#include "project/rescue.h"

#include "base/text.h"
#include "project/file_header.h"
#include "project/journal.h"
#include "project/new_file.h"
#include "project/project.h"
#include "project/rescue_fill.h"
#include "project/rescue_mend.h"
#include "project/rescue_source.h"
#include "project/schema.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace luft::project {
namespace {

constexpr std::int64_t kSchemaRoot = 1;
/// Of the work; the rest is making the new project whole.
constexpr double kReading = 0.7;

/// What one row of a table is called.
struct Noun {
    const char* table;
    const char* one;
    const char* many;
};

constexpr Noun kNouns[] = {
    {"performance", "performance", "performances"},
    {"mark", "mark", "marks"},
    {"moment", "moment", "moments"},
    {"script_item", "part of a script", "parts of scripts"},
    {"sung_word", "sung word", "sung words"},
    {"facet", "facet", "facets"},
    {"shade", "shade", "shades"},
    {"drill", "drill", "drills"},
    {"moment_shade", "shade of a moment", "shades of moments"},
    {"moment_beside", "counterpart of a moment", "counterparts of moments"},
    {"script_quote", "quote", "quotes"},
    {"pin", "pin", "pins"},
};

std::string counted_rows(const std::string& table, std::int64_t n) {
    const auto* noun = std::ranges::find(kNouns, table, &Noun::table);
    const std::string one = noun != std::end(kNouns) ? noun->one : "row of '" + table + "'";
    const std::string many = noun != std::end(kNouns) ? noun->many : "rows of '" + table + "'";
    return std::to_string(n) + " " + (n == 1 ? one : many);
}

/// First pages of the tables, by their names, as the damaged file still says.
std::map<std::string, std::int64_t> read_roots(PageFile& pages) {
    std::map<std::string, std::int64_t> roots;
    const auto take = [&](const StoredRow& row) {
        const bool fits = row.values.size() == 5 && std::holds_alternative<std::string>(row.values[0]) &&
                          std::holds_alternative<std::string>(row.values[1]) &&
                          std::holds_alternative<std::int64_t>(row.values[3]);
        if (fits && std::get<std::string>(row.values[0]) == "table")
            roots.emplace(std::get<std::string>(row.values[1]), std::get<std::int64_t>(row.values[3]));
        return fits;
    };
    pages.read_table(kSchemaRoot, [&](const auto& rows) {
        return static_cast<std::size_t>(std::ranges::count_if(rows, take));
    });
    return roots;
}

bool came_with_first_version(const std::string& table) {
    constexpr std::array<std::string_view, 4> kLater = {"sung_word", "moment_beside", "script_quote", "pin"};
    return std::ranges::find(kLater, table) == kLater.end();
}

/// "marks, moments or pins"; without the tables of which other sentences speak.
std::string list_of(const std::set<std::string>& tables) {
    std::vector<std::string> names;
    for (const Noun& noun : kNouns)
        if (tables.contains(noun.table)) names.emplace_back(noun.many);
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i)
        text += (i == 0 ? "" : i + 1 == names.size() ? " or " : ", ") + names[i];
    return text;
}

struct Saved {
    std::set<std::string> lossy; ///< tables that may have lost rows
    std::vector<std::string> missing;
};

Saved save_rows(PageFile& pages, Database& to, const Progress& progress) {
    Saved saved;
    const auto roots = read_roots(pages);
    const std::vector<TableShape> shapes = table_shapes(to);
    std::map<std::string, Filler> fillers;
    double done = 0;
    for (const TableShape& shape : shapes) {
        progress.step(done++ / static_cast<double>(shapes.size()), "reading what is whole");
        Filler& filler = fillers.try_emplace(shape.table, to, shape).first->second;
        const auto root = roots.find(shape.table);
        if (root == roots.end()) {
            // Files of before may do without it; then no row of it turns up either.
            if (came_with_first_version(shape.table)) saved.lossy.insert(shape.table);
            continue;
        }
        const auto loss = pages.read_table(root->second, [&](const auto& rows) {
            progress.step(done / static_cast<double>(shapes.size()), "reading what is whole");
            return filler.take(rows);
        });
        if (loss.pages > 0 || loss.rows > 0) saved.lossy.insert(shape.table);
        if (loss.rows > 0)
            saved.missing.push_back(counted_rows(shape.table, loss.rows) + " couldn't be read.");
    }
    if (!saved.lossy.empty() || roots.size() < shapes.size())
        pages.read_strays([&](const auto& rows) -> std::size_t {
            progress.step(1, "looking for rows whose table is lost");
            Filler* filler = best_for(rows, fillers, to);
            if (!filler) return 0;
            saved.lossy.insert(filler->table());
            return filler->take(rows);
        });
    for (const auto& [table, filler] : fillers)
        if (filler.refused() > 0) {
            saved.lossy.insert(table);
            saved.missing.push_back(counted_rows(table, filler.refused()) +
                                    " held values that can't be and went.");
        }
    return saved;
}

std::string contents_of(Database& database) {
    std::string text;
    for (const char* table : {"performance", "mark", "moment", "script_item", "sung_word"})
        if (const auto n = database.number(std::string("SELECT count(*) FROM ") + table); n > 0)
            text += (text.empty() ? "" : ", ") + counted_rows(table, n);
    return text.empty() ? "the piece alone" : text;
}

/// The journal of a file that has lost nothing. Its third table has no row ids: SQLite reads it.
void copy_journal(const std::filesystem::path& damaged, Database& to) {
    Database from(damaged, Database::Mode::read);
    for (const std::string& table : journal_tables()) {
        const std::size_t columns = columns_of(to, table).size();
        std::string values = "?";
        for (std::size_t i = 1; i < columns; ++i)
            values += ", ?";
        Statement insert = to.prepare("INSERT INTO " + table + " VALUES (" + values + ")");
        Statement rows = from.prepare("SELECT * FROM " + table);
        while (rows.step()) {
            for (std::size_t i = 0; i < columns; ++i)
                insert.bind_column(static_cast<int>(i) + 1, rows, static_cast<int>(i));
            insert.run();
        }
    }
}

bool try_to_copy_journal(const std::filesystem::path& damaged, Database& to) {
    try {
        copy_journal(damaged, to);
        if (journal_is_whole(to)) return true;
    } catch (const Error& e) {
        if (e.fault() == Fault::cannot_write) throw;
    }
    for (const std::string& table : journal_tables())
        to.run("DELETE FROM " + table);
    return false;
}

void expect_known_version(const std::filesystem::path& damaged) {
    try {
        expect_project_header(damaged);
    } catch (const Error& e) {
        // A damaged header is no hindrance; a newer file, or none, is.
        if (e.fault() != Fault::unreadable) throw;
    }
}

Rescue fill(const std::filesystem::path& damaged, const std::filesystem::path& fresh,
            const Progress& progress) {
    Rescue result;
    Database to(fresh, Database::Mode::fill);
    to.script("PRAGMA foreign_keys = OFF"); // until all is mended
    Transaction making(to, Transaction::Kind::writing);
    create_schema(to);
    PageFile pages(open_file(damaged));
    Saved saved = save_rows(pages, to, progress.part(0, kReading));
    if (to.number("SELECT count(*) FROM piece") + to.number("SELECT count(*) FROM performance") +
            to.number("SELECT count(*) FROM mark") + to.number("SELECT count(*) FROM moment") ==
        0)
        throw Error(Fault::unreadable, "Nothing in the damaged file could be read as a project's.",
                    "Look for a backup: a file of that name with '.before-v' in it.");
    result.missing = std::move(saved.missing);
    for (std::string& said : mend_rescued(to, saved.lossy, progress.part(kReading, 1)))
        result.missing.push_back(std::move(said));
    if (const std::string lost = list_of(saved.lossy); !lost.empty())
        result.missing.push_back("Pages of the file can't be read; there may have been more " + lost + ".");
    if (!result.missing.empty())
        result.missing.emplace_back("The history of edits stayed behind: nothing from before can be undone.");
    else if (!try_to_copy_journal(damaged, to))
        result.missing.emplace_back(
            "The history of edits couldn't be read: nothing from before can be undone.");
    making.commit();
    result.saved = contents_of(to);
    return result;
}

} // namespace

Rescue rescue(const std::filesystem::path& given, const std::filesystem::path& fresh,
              const Progress& progress) {
    const std::filesystem::path damaged = place_of(given);
    expect_known_version(damaged);
    constexpr double kFilling = 0.8; // of the work; the rest reads what was written
    NewFile made(std::filesystem::absolute(fresh));
    const RescueSource source(damaged, std::filesystem::absolute(fresh));
    Rescue result = fill(source.file(), made.path(), progress.part(0, kFilling));
    for (const Damage& damage : Project::open(made.path(), Access::read).check(progress.part(kFilling, 1)))
        result.missing.push_back(damage.what);
    made.keep();
    return result;
}

} // namespace luft::project
