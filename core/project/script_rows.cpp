#include "project/script_rows.h"

#include "project/quote_rows.h"
#include "project/store.h"
#include "project/words.h"

#include <cmath>

namespace luft::project {
namespace {

constexpr const char* kSelect =
    "SELECT s.id, s.performance, s.position, s.kind, s.moment, s.at_s, s.replay_start_s, s.replay_end_s, "
    "s.replay_speed, s.resume_s, s.text, s.own_words, s.rehearsed_s, q.performance, q.start_s, q.end_s "
    "FROM script_item AS s LEFT JOIN script_quote AS q ON q.item = s.id ";

ScriptItem read_row(const Statement& row) {
    ScriptItem item;
    item.id = {row.integer(0)};
    item.performance = {row.integer(1)};
    item.position = static_cast<int>(row.integer(2));
    item.kind = read_word<ScriptItemKind>(row.text(3));
    if (!row.is_null(4)) item.moment = MomentId{row.integer(4)};
    item.at = row.unit<Seconds>(5);
    if (!row.is_null(6)) item.replay = Span{row.unit<Seconds>(6), row.unit<Seconds>(7)};
    item.replay_speed = row.real(8);
    item.resume = row.maybe<Seconds>(9);
    item.text = row.text(10);
    item.own_words = row.truth(11);
    item.rehearsed = row.maybe<Seconds>(12);
    item.quote = read_quote(row, 13);
    return item;
}

std::optional<std::int64_t> moment_of(const ScriptItem& item) {
    return item.moment ? std::optional(item.moment->value) : std::nullopt;
}

std::optional<Seconds> replay_start(const ScriptItem& item) {
    return item.replay ? std::optional(item.replay->start) : std::nullopt;
}

std::optional<Seconds> replay_end(const ScriptItem& item) {
    return item.replay ? std::optional(item.replay->end) : std::nullopt;
}

bool is_time(Seconds t) {
    return std::isfinite(t.value()) && t.value() >= 0;
}

int rank(ScriptItemKind kind) {
    return kind == ScriptItemKind::opening ? 0 : kind == ScriptItemKind::closing ? 2 : 1;
}

} // namespace

std::vector<ScriptItem> read_script(Database& database, PerformanceId id) {
    std::vector<ScriptItem> all;
    Statement rows =
        database.query(std::string(kSelect) + "WHERE s.performance = ? ORDER BY s.position, s.id", id.value);
    while (rows.step())
        all.push_back(read_row(rows));
    return all;
}

ScriptItem read_script_item(Database& database, ScriptItemId id) {
    Statement row = database.query(std::string(kSelect) + "WHERE s.id = ?", id.value);
    if (!row.step())
        throw Error(Fault::not_found,
                    "There is no script item with the number " + std::to_string(id.value) + ".",
                    "A new draft may have replaced it; look at the script.");
    return read_row(row);
}

ScriptItemId insert_script_item(Database& database, const ScriptItem& item) {
    database.run("INSERT INTO script_item (performance, position, kind, moment, at_s, replay_start_s, "
                 "replay_end_s, replay_speed, resume_s, text, own_words, rehearsed_s) "
                 "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                 item.performance.value, item.position, word(item.kind), moment_of(item), item.at,
                 replay_start(item), replay_end(item), item.replay_speed, item.resume, item.text,
                 item.own_words, item.rehearsed);
    const ScriptItemId id{database.last_id()};
    write_quote(database, Quoting::script_item, id.value, item.quote);
    return id;
}

void update_script_item(Database& database, const ScriptItem& item) {
    database.run("UPDATE script_item SET position = ?, kind = ?, moment = ?, at_s = ?, replay_start_s = ?, "
                 "replay_end_s = ?, replay_speed = ?, resume_s = ?, text = ?, own_words = ?, rehearsed_s = ? "
                 "WHERE id = ?",
                 item.position, word(item.kind), moment_of(item), item.at, replay_start(item),
                 replay_end(item), item.replay_speed, item.resume, item.text, item.own_words, item.rehearsed,
                 item.id.value);
    write_quote(database, Quoting::script_item, item.id.value, item.quote);
}

void delete_script_item(Database& database, ScriptItemId id) {
    write_quote(database, Quoting::script_item, id.value, {});
    database.run("DELETE FROM script_item WHERE id = ?", id.value);
}

void demand_script_item(Database& database, const ScriptItem& item) {
    demand(is_time(item.at), "A script item's time can't be before 0:00.");
    if (item.replay) demand_span(*item.replay, "the replay");
    demand(!item.quote || item.kind == ScriptItemKind::stop, "Only a stop can quote another performance.");
    demand_quote(database, item.quote, item.performance);
    demand(item.replay_speed >= 0.25 && item.replay_speed <= 1, "A replay runs at 25 % to 100 % speed.",
           "Give a speed from 0.25 to 1.");
    demand(!item.resume || is_time(*item.resume), "Playback can't go on before 0:00.");
    demand(!item.rehearsed || is_time(*item.rehearsed), "A rehearsed time can't be below 0.");
    demand(!item.moment || database.number("SELECT count(*) FROM moment WHERE id = ? AND performance = ?",
                                           item.moment->value, item.performance.value) == 1,
           "The script item speaks about a moment that this performance doesn't have.",
           "Choose one of its moments.");
}

std::size_t place_by_time(const std::vector<ScriptItem>& script, const ScriptItem& item) {
    const auto later = [&](const ScriptItem& other) {
        if (rank(other.kind) != rank(item.kind)) return rank(other.kind) > rank(item.kind);
        return rank(item.kind) == 1 && other.at > item.at;
    };
    return static_cast<std::size_t>(std::ranges::find_if(script, later) - script.begin());
}

} // namespace luft::project
