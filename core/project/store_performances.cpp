// Performances and their recordings.
#include "base/fingerprint.h"
#include "project/carried_media.h"
#include "project/media_link.h"
#include "project/store.h"

#include <cmath>

namespace luft::project {
namespace {

constexpr const char* kSelect =
    "SELECT id, label, performer, source, permission, media_path, media_size, media_sha256, carried, "
    "duration_s, "
    "sample_rate_hz, channels, has_video, frame_rate_num, frame_rate_den FROM performance ";

Performance read_performance(const Statement& row) {
    Performance p;
    p.id = {row.integer(0)};
    p.label = row.text(1);
    p.performer = row.text(2);
    p.source = row.text(3);
    p.permission = row.text(4);
    p.media = {row.text(5), row.integer(6), row.text(7), !row.is_null(8)};
    p.facts = {row.unit<Seconds>(9),
               static_cast<int>(row.integer(10)),
               static_cast<int>(row.integer(11)),
               row.truth(12),
               row.integer(13),
               row.integer(14)};
    return p;
}

std::vector<Performance> read_performances(Database& database) {
    std::vector<Performance> all;
    Statement rows = database.prepare(std::string(kSelect) + "ORDER BY id");
    while (rows.step())
        all.push_back(read_performance(rows));
    return all;
}

/// "A", "B", … as the first that is free; after "Z" numbers.
std::string free_label(const std::vector<Performance>& all) {
    for (int n = 0;; ++n) {
        std::string label = n < 26 ? std::string(1, static_cast<char>('A' + n)) : "P" + std::to_string(n + 1);
        if (std::ranges::find(all, label, &Performance::label) == all.end()) return label;
    }
}

void demand_label(const std::string& label, const std::vector<Performance>& all) {
    demand(!is_blank(label) && label.find_first_of("\r\n\t") == std::string::npos,
           "A performance's label is a short name on one line.", "Choose another label.");
    demand(std::ranges::find(all, label, &Performance::label) == all.end(),
           "There is a performance '" + label + "' already.", "Choose another label.");
}

void demand_facts(const MediaFacts& f) {
    demand(std::isfinite(f.duration.value()) && f.duration.value() >= 0 && f.sample_rate_hz >= 0 &&
               f.channels >= 0 && f.frame_rate_num >= 0 && f.frame_rate_den > 0,
           "What is said of the recording (length, rates, channels) makes no sense.");
}

std::string known_labels(const std::vector<Performance>& all) {
    std::string names;
    for (const Performance& p : all)
        names += (names.empty() ? "" : ", ") + p.label;
    return names;
}

} // namespace

std::string label_of(Database& database, PerformanceId id) {
    Statement row = database.query("SELECT label FROM performance WHERE id = ?", id.value);
    if (!row.step())
        throw Error(Fault::not_found,
                    "There is no performance with the number " + std::to_string(id.value) + ".",
                    "It may have been removed; look at the list of performances.");
    return row.text(0);
}

std::vector<Performance> Project::performances() const {
    return read_performances(store_->database);
}

Performance Project::performance(const std::string& label) const {
    const std::vector<Performance> all = performances();
    if (all.empty())
        throw Error(Fault::not_found, "The project has no performance yet.", "Add a recording first.");
    if (label.empty()) {
        demand(all.size() == 1, "The project has several performances.",
               "Say which one: " + known_labels(all) + ".");
        return all.front();
    }
    const auto found = std::ranges::find(all, label, &Performance::label);
    if (found == all.end())
        throw Error(Fault::not_found, "There is no performance '" + label + "'.",
                    "The project has: " + known_labels(all) + ".");
    return *found;
}

PerformanceId Project::add_performance(const std::filesystem::path& media, bool carry_it,
                                       const Performance& details, const Progress& progress) {
    store_->expect_writable();
    demand_facts(details.facts);
    const auto bytes = open_file(media);
    const std::int64_t size = bytes->size();
    if (size == 0)
        throw Error(Fault::unreadable, "'" + media.string() + "' is empty.", "Choose another recording.");
    // A linked file is read before the edit begins, so that nobody has to wait for it.
    const std::string path = carry_it ? bytes->name() : link_text(media, store_->folder());
    std::string print = carry_it ? "" : fingerprint(*bytes, progress);

    Edit edit = store_->edit();
    Database& database = store_->database;
    const std::vector<Performance> all = read_performances(database);
    const std::string label = details.label.empty() ? free_label(all) : details.label;
    demand_label(label, all);
    std::optional<std::int64_t> carried;
    if (carry_it) {
        constexpr double kCopying = 0.7; // of the work; the rest reads back what was stored
        carried = carry(database, *bytes, progress.part(0, kCopying));
        print = fingerprint(*carried_bytes(database, *carried), progress.part(kCopying, 1));
    }
    database.run("INSERT INTO performance (label, performer, source, permission, media_path, media_size, "
                 "media_sha256, carried, duration_s, sample_rate_hz, channels, has_video, frame_rate_num, "
                 "frame_rate_den) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                 label, details.performer, details.source, details.permission, path, size, print, carried,
                 details.facts.duration, details.facts.sample_rate_hz, details.facts.channels,
                 details.facts.has_video, details.facts.frame_rate_num, details.facts.frame_rate_den);
    const PerformanceId id{database.last_id()};
    edit.commit("add the performance '" + label + "'");
    return id;
}

void Project::set_performance_notes(PerformanceId id, const std::string& performer, const std::string& source,
                                    const std::string& permission) {
    Edit edit = store_->edit();
    const std::string label = label_of(store_->database, id);
    store_->database.run("UPDATE performance SET performer = ?, source = ?, permission = ? WHERE id = ?",
                         performer, source, permission, id.value);
    edit.commit("change the notes on '" + label + "'");
}

void Project::remove_performance(PerformanceId id) {
    Edit edit = store_->edit();
    Database& database = store_->database;
    const std::string label = label_of(database, id);
    // Curves and carried bytes stay as long as the journal can bring the performance back.
    for (const char* sql :
         {"DELETE FROM script_quote WHERE performance = ?1 OR item IN "
          "(SELECT id FROM script_item WHERE performance = ?1)",
          "DELETE FROM moment_beside WHERE performance = ?1 OR moment IN "
          "(SELECT id FROM moment WHERE performance = ?1)",
          "DELETE FROM pin WHERE first = ?1 OR second = ?1", "DELETE FROM script_item WHERE performance = ?",
          "DELETE FROM moment_shade WHERE moment IN (SELECT id FROM moment WHERE performance = ?)",
          "DELETE FROM moment WHERE performance = ?", "DELETE FROM mark WHERE performance = ?",
          "DELETE FROM sung_word WHERE performance = ?", "DELETE FROM performance WHERE id = ?"})
        database.run(sql, id.value);
    edit.commit("remove the performance '" + label + "'");
}

std::unique_ptr<ByteSource> Project::media(const Performance& performance, bool verify,
                                           const std::vector<std::filesystem::path>& search,
                                           const Progress& progress) const {
    Statement row = store_->database.query(std::string(kSelect) + "WHERE id = ?", performance.id.value);
    if (!row.step()) label_of(store_->database, performance.id);
    const Performance stored = read_performance(row);
    if (!stored.media.carried) return open_linked(stored.media, store_->folder(), verify, search, progress);
    auto bytes = open_carried(store_->file, row.integer(8));
    if (verify && fingerprint(*bytes, progress) != stored.media.fingerprint)
        throw Error(Fault::changed, "The recording carried for '" + stored.label + "' is damaged.",
                    "Open a copy of the project from before it was damaged.");
    return bytes;
}

void Project::relink(PerformanceId id, const std::filesystem::path& media, const Progress& progress) {
    store_->expect_writable();
    const auto bytes = open_file(media);
    const std::string print = fingerprint(*bytes, progress);
    Edit edit = store_->edit();
    Statement row = store_->database.query(std::string(kSelect) + "WHERE id = ?", id.value);
    if (!row.step()) label_of(store_->database, id);
    const Performance stored = read_performance(row);
    row.reset();
    demand(!stored.media.carried, "The project carries the recording of '" + stored.label + "' itself.",
           "There is nothing to link.");
    if (print != stored.media.fingerprint)
        throw Error(Fault::changed,
                    "'" + media.string() + "' is not the recording of '" + stored.label + "'.",
                    "Choose the same file as before, or add this one as another performance.");
    store_->database.run("UPDATE performance SET media_path = ? WHERE id = ?",
                         link_text(media, store_->folder()), id.value);
    edit.commit("link the recording of '" + stored.label + "' anew");
}

} // namespace luft::project
