// Opening, making and closing a project, the piece, the settings and the journal. The other calls are in
// store_*.cpp, one subject a file.
#include "project/project.h"

#include "base/text.h"
#include "project/file_header.h"
#include "project/media_link.h"
#include "project/migrate.h"
#include "project/new_file.h"
#include "project/schema.h"
#include "project/store.h"
#include "project/store_vocabulary.h"

#include <cmath>

namespace luft::project {
namespace {

void demand_settings(const ScriptSettings& s) {
    const auto positive = [](double v) { return std::isfinite(v) && v > 0; };
    demand(positive(s.words_per_minute), "Words a minute must be above 0.", "150 is usual.");
    demand(std::isfinite(s.least_between_stops.value()) && s.least_between_stops.value() >= 0,
           "The least time between stops can't be below 0.");
    demand(positive(s.longest_quote.value()), "The longest quote must be above 0 seconds.");
    demand(!s.most_quoted_share || (*s.most_quoted_share >= 0 && *s.most_quoted_share <= 1),
           "The share that may be quoted lies between 0 and 1.");
    demand(s.frame_rate_num >= 0 && s.frame_rate_den > 0, "The frame rate makes no sense.",
           "Give frames a second, or 0 to take the video's.");
}

void write_settings(Database& database, const ScriptSettings& s) {
    database.run(
        "INSERT INTO script_settings VALUES (1, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO UPDATE SET "
        "words_per_minute = excluded.words_per_minute, "
        "least_between_stops_s = excluded.least_between_stops_s, "
        "longest_quote_s = excluded.longest_quote_s, most_quoted_share = excluded.most_quoted_share, "
        "frame_rate_num = excluded.frame_rate_num, frame_rate_den = excluded.frame_rate_den, "
        "drop_frame = excluded.drop_frame",
        s.words_per_minute, s.least_between_stops, s.longest_quote, s.most_quoted_share, s.frame_rate_num,
        s.frame_rate_den, s.drop_frame);
}

void write_piece(Database& database, const Piece& p) {
    database.run("INSERT INTO piece VALUES (1, ?, ?, ?, ?, ?) ON CONFLICT (id) DO UPDATE SET "
                 "title = excluded.title, writer = excluded.writer, music_key = excluded.music_key, "
                 "metre = excluded.metre, words = excluded.words",
                 p.title, p.writer, p.key, p.metre, p.words);
}

void demand_piece(const Piece& piece) {
    demand(!is_blank(piece.title), "The piece has no title.", "Give the title of the song.");
}

} // namespace

Project::Project(std::unique_ptr<Store> store) : store_(std::move(store)) {}
Project::Project(Project&&) noexcept = default;
Project& Project::operator=(Project&&) noexcept = default;
Project::~Project() = default;

Project Project::create(const std::filesystem::path& given, const Piece& piece) {
    demand_piece(piece);
    const std::filesystem::path file = std::filesystem::absolute(given);
    NewFile made(file);
    {
        Database database(made.path(), Database::Mode::fill);
        Transaction making(database, Transaction::Kind::writing);
        create_schema(database);
        write_piece(database, piece);
        write_settings(database, {});
        write_vocabulary(database, vocabulary::default_vocabulary());
        making.commit();
    }
    made.keep();
    return open(file, Access::edit);
}

Project Project::open(const std::filesystem::path& given, Access access) {
    const std::filesystem::path file = place_of(given);
    expect_project_header(file);
    if (access == Access::edit) expect_writable_folder(file);
    Database database = open_recovered(file, access);
    expect_whole(database, file);
    migrate(database, file, access, migrations(), kVersionWritten);
    verify_schema(database);
    if (access == Access::edit) install_journal(database);
    auto store = std::make_unique<Store>(file, access, std::move(database));
    store->database.on_row_written(
        [log = &store->changes](std::string_view table, std::int64_t row) { log->written(table, row); });
    return Project(std::move(store));
}

const std::filesystem::path& Project::file() const {
    return store_->file;
}

void Project::save_copy(const std::filesystem::path& given) const {
    const std::filesystem::path file = std::filesystem::absolute(given);
    NewFile made(file);
    store_->database.copy_to(made.path());
    {
        Database copy(made.path(), Database::Mode::fill);
        Transaction linking(copy, Transaction::Kind::writing);
        for (const Performance& performance : performances())
            if (!performance.media.carried)
                copy.run("UPDATE performance SET media_path = ? WHERE id = ?",
                         link_text(store_->folder() / performance.media.path, file.parent_path()),
                         performance.id.value);
        linking.commit();
    }
    made.keep();
}

Piece Project::piece() const {
    Statement row = store_->database.prepare("SELECT title, writer, music_key, metre, words FROM piece");
    if (!row.step())
        throw Error(Fault::unreadable, "The project file has lost its piece.",
                    "Run a check to see what else is damaged.");
    return {row.text(0), row.text(1), row.text(2), row.text(3), row.text(4)};
}

void Project::set_piece(const Piece& piece) {
    demand_piece(piece);
    Edit edit = store_->edit();
    write_piece(store_->database, piece);
    edit.commit("change the notes on the piece");
}

ScriptSettings Project::script_settings() const {
    Statement row = store_->database.prepare(
        "SELECT words_per_minute, least_between_stops_s, longest_quote_s, most_quoted_share, frame_rate_num, "
        "frame_rate_den, drop_frame FROM script_settings");
    if (!row.step()) return {};
    ScriptSettings s;
    s.words_per_minute = row.real(0);
    s.least_between_stops = row.unit<Seconds>(1);
    s.longest_quote = row.unit<Seconds>(2);
    s.most_quoted_share = row.maybe<double>(3);
    s.frame_rate_num = row.integer(4);
    s.frame_rate_den = row.integer(5);
    s.drop_frame = row.truth(6);
    return s;
}

void Project::set_script_settings(const ScriptSettings& settings) {
    demand_settings(settings);
    Edit edit = store_->edit();
    write_settings(store_->database, settings);
    edit.commit("change the script's settings");
}

std::optional<std::string> Project::undo() {
    store_->expect_writable();
    return undo_newest(store_->database);
}

std::optional<std::string> Project::redo() {
    store_->expect_writable();
    return redo_next(store_->database);
}

std::vector<JournalEntry> Project::journal(int most) const {
    return journal_entries(store_->database, std::max(most, 0));
}

Changes Project::take_changes() {
    return store_->changes.take(store_->database);
}

void demand_span(Span span, const std::string& of, bool may_be_empty) {
    const double start = span.start.value();
    const double end = span.end.value();
    demand(std::isfinite(start) && std::isfinite(end) && start >= 0 &&
               (may_be_empty ? end >= start : end > start),
           "The span of " + of + ", " + clock_text(span.start) + " to " + clock_text(span.end) +
               ", makes no sense.",
           "Give a start at or after 0:00 and an end after it.");
}

} // namespace luft::project
