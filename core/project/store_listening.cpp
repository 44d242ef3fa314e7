// Detection again and again, without losing the coach's work.
#include "project/mark_rows.h"
#include "project/same_mark.h"
#include "project/store.h"
#include "project/store_curves.h"

#include <map>

namespace luft::project {
namespace {

std::vector<Mark> proposals_of(PerformanceId id, const marks::Analysis& analysis) {
    std::vector<Mark> all;
    const auto take = [&](const auto& list) {
        for (const auto& what : list)
            all.push_back({{}, id, MarkState::proposed, Origin::detected, what});
    };
    take(analysis.notes);
    take(analysis.breaths);
    take(analysis.phrases);
    take(analysis.switches);
    std::ranges::stable_sort(all, {}, [](const Mark& m) { return m.span().start; });
    return all;
}

/// The marks that the coach has dealt with.
class Dealt {
  public:
    void add(const MarkRow& row) {
        Span reach = row.mark.span();
        if (row.found) reach = {std::min(reach.start, row.found->start), std::max(reach.end, row.found->end)};
        rows_.push_back({{reach.start - kNear, reach.end + kNear}, row});
    }

    [[nodiscard]] bool cover(const Mark& proposal) const {
        const Span span = proposal.span();
        return std::ranges::any_of(rows_, [&](const auto& near) {
            return near.first.start <= span.end && span.start <= near.first.end &&
                   means_the_same(proposal, near.second);
        });
    }

  private:
    std::vector<std::pair<Span, MarkRow>> rows_; ///< each with the time that it can reach
};

/// An unchanged proposal keeps its row, so that hearing the same twice changes nothing.
void merge(Database& database, PerformanceId id, const std::vector<Mark>& proposals) {
    Dealt dealt;
    std::multimap<std::string, MarkId> old;
    for (const MarkRow& row : read_mark_rows(database, id))
        if (untouched(row.mark))
            old.emplace(same_words(row.mark), row.mark.id);
        else
            dealt.add(row);
    std::vector<const Mark*> fresh;
    for (const Mark& proposal : proposals) {
        if (dealt.cover(proposal)) continue;
        if (const auto same = old.find(same_words(proposal)); same != old.end())
            old.erase(same);
        else
            fresh.push_back(&proposal);
    }
    for (const auto& [words, gone] : old)
        delete_mark(database, gone);
    for (const Mark* proposal : fresh)
        insert_mark(database, {*proposal, proposal->span()});
}

} // namespace

void Project::store_listening(PerformanceId id, const marks::Analysis& analysis) {
    const std::vector<Mark> proposals = proposals_of(id, analysis);
    for (const Mark& p : proposals)
        demand_span(p.span(), "a mark that was heard", p.kind() == MarkKind::register_switch);
    Edit edit = store_->edit();
    const std::string label = label_of(store_->database, id);
    write_listening(store_->database, id, analysis);
    merge(store_->database, id, proposals);
    edit.commit("listen to '" + label + "'");
}

} // namespace luft::project
