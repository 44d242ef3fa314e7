// Moments: what the coach means to speak about.
#include "base/text.h"
#include "project/quote_rows.h"
#include "project/store.h"
#include "project/store_vocabulary.h"
#include "project/words.h"

#include <map>
#include <set>

namespace luft::project {
namespace {

constexpr const char* kSelect =
    "SELECT m.id, m.performance, m.start_s, m.end_s, m.state, m.origin, m.verdict, m.remark, m.evidence, "
    "m.confidence, m.drill, b.performance, b.start_s, b.end_s "
    "FROM moment AS m LEFT JOIN moment_beside AS b ON b.moment = m.id ";

std::string place_of(const Moment& m) {
    return "moment at " + clock_text(m.span.start);
}

Moment read_moment(const Statement& row) {
    Moment m;
    m.id = {row.integer(0)};
    m.performance = {row.integer(1)};
    m.span = {row.unit<Seconds>(2), row.unit<Seconds>(3)};
    m.state = read_word<MarkState>(row.text(4));
    m.origin = read_word<Origin>(row.text(5));
    m.verdict = read_word<Verdict>(row.text(6));
    m.remark = row.text(7);
    m.evidence = row.text(8);
    m.confidence = {row.real(9)};
    m.drill = row.text(10);
    m.beside = read_quote(row, 11);
    return m;
}

std::vector<Moment> read_moments(Database& database, PerformanceId id) {
    std::vector<Moment> all;
    std::map<std::int64_t, std::vector<vocabulary::Tag>> shades;
    Statement tags = database.query("SELECT moment, facet, shade FROM moment_shade WHERE moment IN "
                                    "(SELECT id FROM moment WHERE performance = ?) ORDER BY id",
                                    id.value);
    while (tags.step())
        shades[tags.integer(0)].push_back({tags.text(1), tags.text(2)});
    Statement rows = database.query(
        std::string(kSelect) + "WHERE m.performance = ? ORDER BY m.start_s, m.end_s, m.id", id.value);
    while (rows.step()) {
        all.push_back(read_moment(rows));
        all.back().shades = shades[all.back().id.value];
    }
    return all;
}

Moment find_moment(Database& database, MomentId id) {
    Statement row = database.query(std::string(kSelect) + "WHERE m.id = ?", id.value);
    if (!row.step())
        throw Error(Fault::not_found, "There is no moment with the number " + std::to_string(id.value) + ".",
                    "New proposals may have replaced it; look at the list of moments.");
    Moment m = read_moment(row);
    Statement tags =
        database.query("SELECT facet, shade FROM moment_shade WHERE moment = ? ORDER BY id", id.value);
    while (tags.step())
        m.shades.push_back({tags.text(0), tags.text(1)});
    return m;
}

void demand_moment(Database& database, const Moment& m, const vocabulary::Vocabulary& vocabulary) {
    demand_span(m.span, "the moment");
    demand_quote(database, m.beside, m.performance);
    demand(m.confidence.value >= 0 && m.confidence.value <= 1, "A moment's confidence lies between 0 and 1.");
    for (const vocabulary::Tag& tag : m.shades)
        demand(vocabulary.shade(tag) != nullptr, "There is no shade '" + vocabulary::tag_text(tag) + "'.",
               "Use shades of the vocabulary, or add this one first.");
    demand(m.drill.empty() || vocabulary.drill(m.drill), "There is no drill '" + m.drill + "'.",
           "Choose one of the drill book, or add this one first.");
}

void write_shades(Database& database, const Moment& m) {
    const std::set<vocabulary::Tag> wanted(m.shades.begin(), m.shades.end());
    std::set<vocabulary::Tag> there;
    Statement tags = database.query("SELECT facet, shade FROM moment_shade WHERE moment = ?", m.id.value);
    while (tags.step())
        there.insert({tags.text(0), tags.text(1)});
    for (const vocabulary::Tag& tag : there)
        if (!wanted.contains(tag))
            database.run("DELETE FROM moment_shade WHERE moment = ? AND facet = ? AND shade = ?", m.id.value,
                         tag.facet, tag.shade);
    for (const vocabulary::Tag& tag : m.shades)
        if (there.insert(tag).second)
            database.run("INSERT INTO moment_shade (moment, facet, shade) VALUES (?, ?, ?)", m.id.value,
                         tag.facet, tag.shade);
}

std::optional<std::string> drill_or_none(const Moment& m) {
    return m.drill.empty() ? std::nullopt : std::optional(m.drill);
}

MomentId insert_moment(Database& database, Moment m) {
    database.run("INSERT INTO moment (performance, start_s, end_s, state, origin, verdict, remark, evidence, "
                 "confidence, drill) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                 m.performance.value, m.span.start, m.span.end, word(m.state), word(m.origin),
                 word(m.verdict), m.remark, m.evidence, m.confidence.value, drill_or_none(m));
    m.id = {database.last_id()};
    write_shades(database, m);
    write_quote(database, Quoting::moment, m.id.value, m.beside);
    return m.id;
}

void delete_moment(Database& database, MomentId id) {
    database.run("DELETE FROM moment_shade WHERE moment = ?", id.value);
    write_quote(database, Quoting::moment, id.value, {});
    database.run("DELETE FROM moment WHERE id = ?", id.value);
}

std::set<vocabulary::Tag> shades_of(const Moment& m) {
    return {m.shades.begin(), m.shades.end()};
}

bool means_the_same(const Moment& a, const Moment& b) {
    return a.span.overlaps(b.span) && shades_of(a) == shades_of(b);
}

bool says_the_same(const Moment& a, const Moment& b) {
    return a.span == b.span && a.verdict == b.verdict && a.remark == b.remark && a.evidence == b.evidence &&
           a.confidence == b.confidence && a.shades == b.shades && a.drill == b.drill && a.beside == b.beside;
}

/// Proposals that nobody has dealt with and no script speaks about.
bool replaceable(Database& database, const Moment& m) {
    return m.state == MarkState::proposed && m.origin == Origin::detected &&
           database.number("SELECT count(*) FROM script_item WHERE moment = ?", m.id.value) == 0;
}

} // namespace

std::vector<Moment> Project::moments(PerformanceId id, bool with_dropped) const {
    const Transaction reading = store_->reading();
    label_of(store_->database, id);
    std::vector<Moment> all = read_moments(store_->database, id);
    if (!with_dropped) std::erase_if(all, [](const Moment& m) { return m.state == MarkState::dropped; });
    return all;
}

Moment Project::moment(MomentId id) const {
    const Transaction reading = store_->reading();
    return find_moment(store_->database, id);
}

MomentId Project::add_moment(const Moment& moment) {
    Edit edit = store_->edit();
    label_of(store_->database, moment.performance);
    demand_moment(store_->database, moment, read_vocabulary(store_->database));
    const MomentId id = insert_moment(store_->database, moment);
    edit.commit("add " + place_of(moment));
    return id;
}

void Project::change_moment(const Moment& changed) {
    Edit edit = store_->edit();
    Database& database = store_->database;
    const Moment before = find_moment(database, changed.id);
    Moment stored = changed; // which performance it is of can't be changed
    stored.performance = before.performance;
    demand_moment(database, stored, read_vocabulary(database));
    const bool still_proposed = before.state == MarkState::proposed && changed.state == MarkState::proposed;
    const MarkState state = still_proposed ? MarkState::kept : changed.state;
    database.run(
        "UPDATE moment SET start_s = ?, end_s = ?, state = ?, verdict = ?, remark = ?, evidence = ?, "
        "confidence = ?, drill = ? WHERE id = ?",
        changed.span.start, changed.span.end, word(state), word(changed.verdict), changed.remark,
        changed.evidence, changed.confidence.value, drill_or_none(changed), changed.id.value);
    write_shades(database, changed);
    write_quote(database, Quoting::moment, changed.id.value, changed.beside);
    edit.commit("change " + place_of(before));
}

void Project::set_moment_state(MomentId id, MarkState state) {
    Edit edit = store_->edit();
    const std::string place = place_of(find_moment(store_->database, id));
    store_->database.run("UPDATE moment SET state = ? WHERE id = ?", word(state), id.value);
    edit.commit(state == MarkState::kept      ? "keep " + place
                : state == MarkState::dropped ? "drop " + place
                                              : "leave " + place + " open");
}

int Project::propose_moments(PerformanceId id, const std::vector<Moment>& proposals) {
    Edit edit = store_->edit();
    Database& database = store_->database;
    const std::string label = label_of(database, id);
    const vocabulary::Vocabulary vocabulary = read_vocabulary(database);
    std::vector<Moment> dealt;
    std::vector<Moment> old;
    for (const Moment& m : read_moments(database, id))
        (replaceable(database, m) ? old : dealt).push_back(m);
    int stored = 0;
    std::vector<Moment> fresh;
    for (Moment proposal : proposals) {
        proposal.performance = id;
        demand_moment(database, proposal, vocabulary);
        if (std::ranges::any_of(dealt, [&](const Moment& m) { return means_the_same(m, proposal); }))
            continue;
        ++stored;
        const auto same =
            std::ranges::find_if(old, [&](const Moment& m) { return says_the_same(m, proposal); });
        if (same != old.end()) {
            old.erase(same); // stays as it is
            continue;
        }
        proposal.state = MarkState::proposed;
        proposal.origin = Origin::detected;
        fresh.push_back(std::move(proposal));
    }
    for (const Moment& gone : old)
        delete_moment(database, gone.id);
    for (const Moment& proposal : fresh)
        insert_moment(database, proposal);
    edit.commit("propose moments for '" + label + "'");
    return stored;
}

} // namespace luft::project
