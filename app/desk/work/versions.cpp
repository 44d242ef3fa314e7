#include "desk/work/versions.h"

#include "compare/telling.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {
namespace {

using sheet::index_of;
using sheet::other_of;

constexpr Seconds kSamePlace{0.1}; ///< a difference this near was the same before it was all found anew

/// The same difference in another list of them.
std::optional<std::size_t> again(const std::vector<compare::Difference>& all,
                                 const compare::Difference& one) {
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].kind == one.kind && all[i].a.has_value() == one.a.has_value() &&
            (!one.a || std::abs((all[i].a->start - one.a->start).value()) < kSamePlace.value()))
            return i;
    return std::nullopt;
}

} // namespace

Versions::Versions(Session& session) : session_(session) {
    session_.watch([this](const Session::Change& change) { watch(change); });
    watch({true, true, true, true});
}

void Versions::watch(const Session::Change& change) {
    if (change.project) {
        found_.clear();
        result_.reset();
        asked_.reset();
        selected_.reset();
        listed_.clear();
        chosen_[0].reset();
        chosen_[1].reset();
    }
    const auto& all = session_.performances();
    const auto there = [&](const std::optional<project::PerformanceId>& id) {
        return id && std::ranges::find(all, *id, &project::Performance::id) != all.end();
    };
    if (!there(chosen_[0]) || !there(chosen_[1])) {
        chosen_[0].reset();
        chosen_[1].reset();
        if (all.size() >= 2) {
            chosen_[0] = all[0].id;
            // The one that is at hand stands below, where what is otherwise is told of.
            chosen_[1] = session_.shown() && session_.shown() != all[0].id ? *session_.shown() : all[1].id;
        }
        forget_places();
        look_up();
    }
    if (change.project || change.contents) read_pins();
}

void Versions::forget_places() {
    place_[0].reset();
    place_[1].reset();
    looked_at_ = Which::b;
}

void Versions::read_pins() {
    pins_.clear();
    if (session_.is_open() && chosen_[0] && session_.damage().empty())
        pins_ = session_.project().pins(*chosen_[0], *chosen_[1]);
}

Versions::Two Versions::two() const {
    return {chosen_[0].value_or(project::PerformanceId{}).value,
            chosen_[1].value_or(project::PerformanceId{}).value};
}

const project::Performance& Versions::performance(Which which) const {
    const auto& all = session_.performances();
    const auto it = std::ranges::find(all, chosen_[index_of(which)].value_or(project::PerformanceId{}),
                                      &project::Performance::id);
    if (it == all.end())
        throw Error(Fault::bad_request, "There is only one performance of this piece.",
                    "File, Add a performance brings in another one.");
    return *it;
}

void Versions::choose(Which which, project::PerformanceId id) {
    auto &here = chosen_[index_of(which)], &there = chosen_[index_of(other_of(which))];
    if (here == id) return;
    if (there == id) {
        there = here;
        std::swap(place_[0], place_[1]);
        looked_at_ = other_of(looked_at_);
    } else {
        forget_places();
    }
    here = id;
    look_up();
    read_pins();
}

void Versions::look_up() {
    const auto found = found_.find(two());
    result_ = found == found_.end() ? nullptr : found->second;
    selected_.reset();
    list();
}

std::optional<Job::Match> Versions::wanted(bool anew) {
    if (!possible() || !chosen_[0]) return std::nullopt;
    const Asked now{two(), stamp_of(session_.project(), *chosen_[0], *chosen_[1])};
    const bool asked = asked_ && asked_->two == now.two && asked_->stamp == now.stamp;
    if (!anew && (asked || (result_ && result_->stamp == now.stamp))) return std::nullopt;
    asked_ = now;
    Job::Match task{*chosen_[0], *chosen_[1], result_};
    for (const auto& [names, matched] : found_) // whoever has heard one of the two
        if (!task.before && (names.first == now.two.first || names.second == now.two.second ||
                             names.first == now.two.second || names.second == now.two.first))
            task.before = matched;
    return task;
}

void Versions::take(std::shared_ptr<const Matched> matched) {
    const Two names{matched->comparison.a.id.value, matched->comparison.b.id.value};
    found_[names] = matched;
    if (asked_ && asked_->two == names) asked_.reset();
    if (names != two()) return;
    const auto before = difference() ? std::optional(*difference()) : std::nullopt;
    result_ = std::move(matched);
    selected_ = before ? again(result_->comparison.differences, *before) : std::nullopt;
    list();
}

void Versions::set_order(DifferenceOrder order) {
    order_ = order;
    list();
}

void Versions::list() {
    listed_.clear();
    if (!result_) return;
    const auto& all = result_->comparison.differences;
    const auto add = [&](std::size_t i) {
        if (std::ranges::find(listed_, i) == listed_.end()) listed_.push_back(i);
    };
    if (order_ == DifferenceOrder::most_telling)
        for (const auto& telling : compare::most_telling(all, all.size())) {
            add(telling.difference);
            for (const std::size_t i : telling.likewise)
                add(i);
        }
    for (std::size_t i = 0; i < all.size(); ++i)
        add(i);
}

const compare::Difference* Versions::difference() const {
    return result_ && selected_ ? &result_->comparison.differences.at(*selected_) : nullptr;
}

void Versions::select(std::optional<std::size_t> difference) {
    selected_ = difference && result_ && *difference < result_->comparison.differences.size() ? difference
                                                                                              : std::nullopt;
}

void Versions::step(bool forward) {
    if (listed_.empty()) return;
    const auto at = selected_ ? std::ranges::find(listed_, *selected_) : listed_.end();
    if (at == listed_.end())
        selected_ = listed_.front();
    else if (forward && at + 1 != listed_.end())
        selected_ = *(at + 1);
    else if (!forward && at != listed_.begin())
        selected_ = *(at - 1);
}

void Versions::set_place(Which which, Seconds own) {
    place_[index_of(which)] = std::clamp(own, Seconds(0), performance(which).facts.duration);
    looked_at_ = which;
}

std::optional<Seconds> Versions::counterpart(Which which, Seconds own) const {
    if (!result_) return std::nullopt;
    const auto& alignment = result_->comparison.alignment;
    return which == Which::a ? alignment.to_b(own) : alignment.to_a(own);
}

} // namespace luft::desk
