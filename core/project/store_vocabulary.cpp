// Facets, shades and drills.
#include "project/store_vocabulary.h"

#include "project/store.h"
#include "project/words.h"

#include <nlohmann/json.hpp>

namespace luft::project {
namespace {

using nlohmann::json;
using vocabulary::Drill;
using vocabulary::Facet;
using vocabulary::Shade;
using vocabulary::Tag;

std::string list_text(const std::vector<std::string>& list) {
    return json(list).dump(-1, ' ', false, json::error_handler_t::replace);
}

std::vector<std::string> read_list(const std::string& text) {
    const json list = json::parse(text, nullptr, false);
    const bool fine =
        list.is_array() && std::ranges::all_of(list, [](const json& e) { return e.is_string(); });
    if (!fine)
        throw Error(Fault::unreadable, "The drill book in the project file is damaged.",
                    "Run a check to see what else is.");
    return list.get<std::vector<std::string>>();
}

/// "onset:glottal", or "onset" for the whole facet.
std::string trains_text(const Tag& tag) {
    return tag.shade.empty() ? tag.facet : vocabulary::tag_text(tag);
}

Tag read_trains(const std::string& text) {
    const auto colon = text.find(':');
    return colon == std::string::npos ? Tag{text, {}} : Tag{text.substr(0, colon), text.substr(colon + 1)};
}

void insert_facet(Database& database, const Facet& f) {
    database.run("INSERT INTO facet (key, name, description, basis, own) VALUES (?, ?, ?, ?, ?)", f.key,
                 f.name, f.description, word(f.basis), f.own);
}

void insert_shade(Database& database, const std::string& facet, const Shade& s) {
    database.run("INSERT INTO shade (facet, key, name, description, leaning) VALUES (?, ?, ?, ?, ?)", facet,
                 s.key, s.name, s.description, word(s.leaning));
}

void put(Database& database, const Drill& d) {
    std::vector<std::string> trains;
    std::ranges::transform(d.trains, std::back_inserter(trains), trains_text);
    database.run(
        "INSERT INTO drill (key, title, aim, steps, caution, trains, own) VALUES (?, ?, ?, ?, ?, ?, ?) "
        "ON CONFLICT (key) DO UPDATE SET title = excluded.title, aim = excluded.aim, "
        "steps = excluded.steps, caution = excluded.caution, trains = excluded.trains, "
        "own = excluded.own",
        d.key, d.title, d.aim, list_text(d.steps), d.caution, list_text(trains), d.own);
}

void demand_new_key(const std::string& key, const std::string& name, bool taken) {
    demand(vocabulary::is_key(key), "'" + key + "' can't be a key.",
           "Use 1 to 40 of a-z, 0-9 and '-', starting with a letter.");
    demand(!taken, "'" + key + "' is in the vocabulary already.", "Choose another key.");
    demand(!is_blank(name), "'" + key + "' has no name.", "Give the name that a teacher would say.");
}

} // namespace

void write_vocabulary(Database& database, const vocabulary::Vocabulary& all) {
    for (const Facet& facet : all.facets) {
        insert_facet(database, facet);
        for (const Shade& shade : facet.shades)
            insert_shade(database, facet.key, shade);
    }
    for (const Drill& drill : all.drills)
        put(database, drill);
}

void add_missing_vocabulary(Database& database, const vocabulary::Vocabulary& all) {
    const auto missing = [&](const char* table, const std::string& key) {
        return database.number(std::string("SELECT count(*) FROM ") + table + " WHERE key = ?", key) == 0;
    };
    for (const Facet& facet : all.facets) {
        if (missing("facet", facet.key)) insert_facet(database, facet);
        for (const Shade& shade : facet.shades)
            if (database.number("SELECT count(*) FROM shade WHERE facet = ? AND key = ?", facet.key,
                                shade.key) == 0)
                insert_shade(database, facet.key, shade);
    }
    for (const Drill& drill : all.drills)
        if (missing("drill", drill.key)) put(database, drill);
}

vocabulary::Vocabulary read_vocabulary(Database& database) {
    vocabulary::Vocabulary all;
    Statement facets = database.prepare("SELECT key, name, description, basis, own FROM facet ORDER BY id");
    Statement shades =
        database.prepare("SELECT key, name, description, leaning FROM shade WHERE facet = ? ORDER BY id");
    while (facets.step()) {
        Facet f{
            facets.text(0), facets.text(1), facets.text(2), read_word<vocabulary::Basis>(facets.text(3)), {},
            facets.truth(4)};
        shades.bind(f.key);
        while (shades.step())
            f.shades.push_back({shades.text(0), shades.text(1), shades.text(2),
                                read_word<vocabulary::Leaning>(shades.text(3))});
        shades.reset();
        all.facets.push_back(std::move(f));
    }
    Statement drills =
        database.prepare("SELECT key, title, aim, steps, caution, trains, own FROM drill ORDER BY id");
    while (drills.step()) {
        Drill d{drills.text(0), drills.text(1), drills.text(2), read_list(drills.text(3)), drills.text(4), {},
                drills.truth(6)};
        for (const std::string& tag : read_list(drills.text(5)))
            d.trains.push_back(read_trains(tag));
        all.drills.push_back(std::move(d));
    }
    return all;
}

vocabulary::Vocabulary Project::vocabulary() const {
    const Transaction reading = store_->reading();
    return read_vocabulary(store_->database);
}

void Project::add_facet(const Facet& facet) {
    Edit edit = store_->edit();
    demand_new_key(facet.key, facet.name, read_vocabulary(store_->database).facet(facet.key) != nullptr);
    Facet own = facet;
    own.own = true;
    insert_facet(store_->database, own);
    for (auto s = own.shades.begin(); s != own.shades.end(); ++s) {
        demand_new_key(s->key, s->name, std::ranges::find(own.shades.begin(), s, s->key, &Shade::key) != s);
        insert_shade(store_->database, own.key, *s);
    }
    edit.commit("add the facet '" + own.name + "'");
}

void Project::add_shade(const std::string& facet, const Shade& shade) {
    Edit edit = store_->edit();
    const vocabulary::Vocabulary all = read_vocabulary(store_->database);
    if (!all.facet(facet))
        throw Error(Fault::not_found, "There is no facet '" + facet + "'.", "Add the facet first.");
    demand_new_key(shade.key, shade.name, all.shade({facet, shade.key}) != nullptr);
    insert_shade(store_->database, facet, shade);
    edit.commit("add the shade '" + facet + ":" + shade.key + "'");
}

void Project::put_drill(const Drill& drill) {
    Edit edit = store_->edit();
    const vocabulary::Vocabulary all = read_vocabulary(store_->database);
    demand_new_key(drill.key, drill.title, false);
    for (const Tag& tag : drill.trains)
        demand(tag.shade.empty() ? all.facet(tag.facet) != nullptr : all.shade(tag) != nullptr,
               "There is no shade '" + trains_text(tag) + "' that the drill could train.",
               "Use shades of the vocabulary, or add them first.");
    const bool known = all.drill(drill.key) != nullptr;
    Drill own = drill;
    own.own = true;
    put(store_->database, own);
    edit.commit((known ? "change the drill '" : "add the drill '") + own.title + "'");
}

} // namespace luft::project
