// The words under the line of a performance.
#include "base/text.h"
#include "project/mark_rows.h"
#include "project/spread_words.h"
#include "project/store.h"

#include <cmath>
#include <set>

namespace luft::project {
namespace {

constexpr const char* kSelect = "SELECT id, performance, text, joins, at_s, placed FROM sung_word ";

SungWord read_word(const Statement& row) {
    return {{row.integer(0)}, {row.integer(1)},     row.text(2),
            row.truth(3),     row.unit<Seconds>(4), row.truth(5)};
}

std::vector<SungWord> read_words(Database& database, PerformanceId id) {
    std::vector<SungWord> all;
    Statement rows =
        database.query(std::string(kSelect) + "WHERE performance = ? ORDER BY ordinal, id", id.value);
    while (rows.step())
        all.push_back(read_word(rows));
    return all;
}

void demand_words(const std::vector<SungWord>& words) {
    for (const SungWord& word : words) {
        demand(!word.text.empty() && word.text.find_first_of(" \t\r\n") == std::string::npos,
               "A sung word is empty or holds a space.", "Give each word or syllable by itself.");
        demand(std::isfinite(word.at.value()) && word.at.value() >= 0,
               "The word '" + word.text + "' stands at no time.", "Give a time at or after 0:00.");
    }
    demand(std::ranges::is_sorted(words, {}, &SungWord::at), "The sung words are not in order of time.",
           "Words can't pass each other.");
}

/// Writes them in the order given. A row that says the same already isn't recorded by the journal.
void write_words(Database& database, PerformanceId id, const std::vector<SungWord>& words) {
    std::set<std::int64_t> stored;
    for (const SungWord& old : read_words(database, id))
        stored.insert(old.id.value);
    std::set<std::int64_t> going = stored;
    for (const SungWord& word : words)
        going.erase(word.id.value);
    for (const std::int64_t gone : going)
        database.run("DELETE FROM sung_word WHERE id = ?", gone);
    int ordinal = 0;
    for (const SungWord& word : words) {
        ++ordinal;
        if (stored.erase(word.id.value) > 0) // an id that comes twice is a new word the second time
            database.run(
                "UPDATE sung_word SET ordinal = ?, text = ?, joins = ?, at_s = ?, placed = ? WHERE id = ?",
                ordinal, word.text, word.joins, word.at, word.placed, word.id.value);
        else
            database.run("INSERT INTO sung_word (performance, ordinal, text, joins, at_s, placed) "
                         "VALUES (?, ?, ?, ?, ?, ?)",
                         id.value, ordinal, word.text, word.joins, word.at, word.placed);
    }
}

bool same_text(const std::vector<SungWord>& a, const std::vector<SungWord>& b) {
    return std::ranges::equal(
        a, b, [](const SungWord& x, const SungWord& y) { return x.text == y.text && x.joins == y.joins; });
}

std::vector<SungWord> spread_around(Database& database, PerformanceId id,
                                    const std::vector<SungWord>& words) {
    Statement piece = database.prepare("SELECT words FROM piece");
    std::vector<Mark> marks;
    for (MarkRow& row : read_mark_rows(database, id))
        marks.push_back(std::move(row.mark));
    auto spread = spread_words(piece.step() ? piece.text(0) : "", marks, words);
    return same_text(spread, words) ? spread : words;
}

} // namespace

std::vector<SungWord> Project::sung_words(PerformanceId id) const {
    const Transaction reading = store_->reading();
    label_of(store_->database, id);
    return read_words(store_->database, id);
}

void Project::set_sung_words(PerformanceId id, const std::vector<SungWord>& words) {
    Edit edit = store_->edit();
    const std::string label = label_of(store_->database, id);
    demand_words(words);
    write_words(store_->database, id, words);
    edit.commit("set the words under the line of '" + label + "'");
}

void Project::move_sung_word(SungWordId id, Seconds at) {
    demand(std::isfinite(at.value()) && at.value() >= 0, "A word can't stand there.",
           "Give a time at or after 0:00.");
    Edit edit = store_->edit();
    Database& database = store_->database;
    const PerformanceId performance{
        database.number("SELECT performance FROM sung_word WHERE id = ?", id.value)};
    std::vector<SungWord> words = read_words(database, performance);
    const auto moved = std::ranges::find(words, id, &SungWord::id);
    if (moved == words.end())
        throw Error(Fault::not_found,
                    "There is no sung word with the number " + std::to_string(id.value) + ".",
                    "The words may have been spread anew; look at the sheet.");
    moved->at = at;
    moved->placed = true;
    for (auto word = words.begin(); word != words.end(); ++word) {
        const bool passed = word < moved ? word->at > at : word->at < at;
        demand(!passed || !word->placed,
               "The word '" + moved->text + "' would pass '" + word->text + "', which you have placed.",
               "Move that one first.");
        if (passed) word->at = at;
    }
    const std::string label = "move the word '" + moved->text + "' to " + clock_text(at);
    write_words(database, performance, spread_around(database, performance, words));
    edit.commit(label);
}

} // namespace luft::project
