// The script of a performance.
#include "base/text.h"
#include "project/script_rows.h"
#include "project/store.h"
#include "project/words.h"

namespace luft::project {
namespace {

std::string place_of(const ScriptItem& item) {
    const bool timed = item.kind == ScriptItemKind::stop || item.kind == ScriptItemKind::aside;
    return std::string(word(item.kind)) + (timed ? " at " + clock_text(item.at) : "");
}

/// Stores the items in the order given, numbered from 1; those with id 0 are new. The ids in that order.
std::vector<ScriptItemId> write_in_order(Database& database, std::vector<ScriptItem> items) {
    std::vector<ScriptItemId> ids;
    int position = 0;
    for (ScriptItem& item : items) {
        item.position = ++position;
        if (item.id.value == 0)
            item.id = insert_script_item(database, item);
        else
            update_script_item(database, item); // a row that says the same already isn't recorded
        ids.push_back(item.id);
    }
    return ids;
}

auto find_item(std::vector<ScriptItem>& items, ScriptItemId id) {
    return std::ranges::find(items, id, &ScriptItem::id);
}

/// Index at which an item belongs: by media time where its position is 0.
std::size_t place_of(const std::vector<ScriptItem>& all, const ScriptItem& item) {
    return item.position == 0 ? place_by_time(all, item)
                              : std::min(static_cast<std::size_t>(item.position) - 1, all.size());
}

/// The drafted items with the coach's own untouched: text and settings as stored, the place as drafted.
std::vector<ScriptItem> merge_draft(Database& database, PerformanceId id, std::vector<ScriptItem> stored,
                                    const std::vector<ScriptItem>& drafted) {
    std::vector<ScriptItem> merged;
    for (ScriptItem item : drafted) {
        item.performance = id;
        if (item.id.value != 0) {
            const auto old = find_item(stored, item.id);
            if (old == stored.end())
                throw Error(Fault::not_found,
                            "The script has no item with the number " + std::to_string(item.id.value) + ".",
                            "Draft the script again.");
            if (old->own_words) item = *old;
            stored.erase(old);
        }
        demand_script_item(database, item);
        merged.push_back(std::move(item));
    }
    for (const ScriptItem& missing : stored)
        if (missing.own_words)
            merged.insert(merged.begin() + static_cast<std::ptrdiff_t>(place_by_time(merged, missing)),
                          missing);
        else
            delete_script_item(database, missing.id);
    return merged;
}

} // namespace

std::vector<ScriptItem> Project::script(PerformanceId id) const {
    const Transaction reading = store_->reading();
    label_of(store_->database, id);
    return read_script(store_->database, id);
}

void Project::store_script(PerformanceId id, const std::vector<ScriptItem>& items) {
    Edit edit = store_->edit();
    Database& database = store_->database;
    const std::string label = label_of(database, id);
    write_in_order(database, merge_draft(database, id, read_script(database, id), items));
    edit.commit("draft the script for '" + label + "'");
}

ScriptItemId Project::add_script_item(const ScriptItem& given) {
    Edit edit = store_->edit();
    Database& database = store_->database;
    label_of(database, given.performance);
    demand_script_item(database, given);
    demand(given.position >= 0, "Positions in the script count from 1.");
    ScriptItem item = given;
    item.id = {};
    std::vector<ScriptItem> all = read_script(database, item.performance);
    const std::size_t place = place_of(all, item);
    all.insert(all.begin() + static_cast<std::ptrdiff_t>(place), item);
    const ScriptItemId id = write_in_order(database, all)[place];
    edit.commit("add " + place_of(item));
    return id;
}

void Project::change_script_item(const ScriptItem& changed) {
    const ScriptItem before = read_script_item(store_->database, changed.id);
    change_script(before.performance, {changed}, "change " + place_of(before));
}

void Project::change_script(PerformanceId id, const std::vector<ScriptItem>& changed,
                            const std::string& label) {
    Edit edit = store_->edit();
    Database& database = store_->database;
    label_of(database, id);
    for (ScriptItem item : changed) {
        item.performance = id;
        demand_script_item(database, item);
        demand(item.position >= 0, "Positions in the script count from 1.");
        std::vector<ScriptItem> all = read_script(database, id);
        if (item.id.value != 0) {
            const ScriptItem before = read_script_item(database, item.id);
            const auto old = find_item(all, item.id);
            demand(old != all.end(), "That part of the script belongs to another performance.");
            // The time was measured for other words.
            if (item.text != before.text && item.rehearsed == before.rehearsed) item.rehearsed.reset();
            all.erase(old);
        }
        all.insert(all.begin() + static_cast<std::ptrdiff_t>(place_of(all, item)), item);
        write_in_order(database, all);
    }
    edit.commit(label);
}

void Project::remove_script_item(ScriptItemId id) {
    Edit edit = store_->edit();
    Database& database = store_->database;
    const ScriptItem item = read_script_item(database, id);
    delete_script_item(database, id);
    write_in_order(database, read_script(database, item.performance));
    edit.commit("remove " + place_of(item));
}

void Project::set_rehearsed(const std::vector<std::pair<ScriptItemId, std::optional<Seconds>>>& times) {
    Edit edit = store_->edit();
    Database& database = store_->database;
    for (const auto& [id, time] : times) {
        ScriptItem item = read_script_item(database, id);
        item.rehearsed = time;
        demand_script_item(database, item);
        update_script_item(database, item);
    }
    edit.commit("keep the rehearsed times");
}

} // namespace luft::project
