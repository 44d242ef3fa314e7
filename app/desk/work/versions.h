// Two performances side by side: which two, what was found, what is chosen, and what can be done with it.
#pragma once

#include "desk/work/job.h"
#include "desk/work/session.h"
#include "desk/work/turns.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace luft::desk {

/// In which order differences are listed.
enum class DifferenceOrder { by_time, most_telling };

/// What is found is kept while the project is open. For one thread.
class Versions {
  public:
    using Which = sheet::Which;

    explicit Versions(Session& session);

    /// Whether the project has two performances.
    [[nodiscard]] bool possible() const { return session_.performances().size() >= 2; }
    /// Throws Error(bad_request) when there aren't two.
    [[nodiscard]] const project::Performance& performance(Which which) const;
    /// Takes another performance for one of the two; the other one of the two changes places with it.
    void choose(Which which, project::PerformanceId id);
    void swap() { choose(Which::a, performance(Which::b).id); }

    /// What was found about the two, as it was when it was made; null when nothing is known yet.
    [[nodiscard]] const Matched* result() const { return result_.get(); }
    [[nodiscard]] std::shared_ptr<const Matched> shared() const { return result_; }
    /// Work that is to be done because nothing is known of the two or something has changed since; nothing
    /// when it has been asked for already. With `anew`, asks again.
    [[nodiscard]] std::optional<Job::Match> wanted(bool anew = false);
    void take(std::shared_ptr<const Matched> matched);
    /// That work was asked for, of whichever two, and hasn't come yet.
    [[nodiscard]] bool waits() const { return asked_ && asked_->why_not.empty(); }
    /// That work was stopped, or couldn't be done, in a sentence. Nothing, if other work was asked for since.
    void not_done(const Job::Match& work, const std::string& why);
    /// Why the two weren't compared, or not anew; empty when they were, or are to be.
    [[nodiscard]] std::string why_not() const;
    /// Why there is nothing about the two yet, in a sentence or two; empty when there is.
    [[nodiscard]] std::string lacking() const;
    /// What is to be known about the result: that it is out of date, what it had to do without. Often empty.
    [[nodiscard]] std::string note() const;

    /// Indices of the result's differences, in the order chosen.
    [[nodiscard]] const std::vector<std::size_t>& listed() const { return listed_; }
    [[nodiscard]] DifferenceOrder order() const { return order_; }
    void set_order(DifferenceOrder order);
    [[nodiscard]] std::optional<std::size_t> selected() const { return selected_; }
    void select(std::optional<std::size_t> difference);
    /// The next or the one before in the list; the first when none is selected.
    void step(bool forward);

    /// The line that was looked at last: moments are made there. B until A is.
    [[nodiscard]] Which looked_at() const { return looked_at_; }
    /// A place in one of the two, where a click went; outside of the recording, the nearest one inside.
    void set_place(Which which, Seconds own);
    [[nodiscard]] std::optional<Seconds> place(Which which) const { return place_[sheet::index_of(which)]; }
    /// The place of the other performance that belongs to one's, if there is one.
    [[nodiscard]] std::optional<Seconds> counterpart(Which which, Seconds own) const;

    /// What of a performance is heard for the selected difference, at least kLeastHeard long; without one,
    /// the line at the place that was looked at last, or what goes with it, else the first line. None where
    /// it has nothing there.
    [[nodiscard]] std::optional<Span> heard(Which which) const;
    /// One of them, or A and then B, whichever has something there. Throws Error(bad_request) where there is
    /// nothing to hear.
    [[nodiscard]] std::deque<Turn> turn(Which which) const;
    [[nodiscard]] std::deque<Turn> in_turn() const;
    /// Both at once, for as long as A's takes.
    [[nodiscard]] std::deque<Turn> both() const;

    /// In order of A's time.
    [[nodiscard]] const std::vector<project::Pin>& pins() const { return pins_; }
    /// Ties the two places. Throws Error(bad_request) when one isn't set or pins would cross.
    void pin_places();
    void remove_pin(std::size_t index);

    /// Makes a moment about the selected difference in one of the two, with its sentence as evidence and the
    /// other performance beside it; then that performance is shown and the moment selected. One edit. Throws
    /// Error(bad_request) without a selected difference that is at a place.
    void make_moment(Which in);

  private:
    using Two = std::pair<std::int64_t, std::int64_t>;
    void watch(const Session::Change& change);
    void read_pins();
    void look_up();
    void list();
    void forget_places();
    [[nodiscard]] Two two() const;
    [[nodiscard]] const compare::Difference* difference() const;
    [[nodiscard]] std::optional<Span> span(Which which) const;

    Session& session_;
    std::optional<project::PerformanceId> chosen_[2];
    std::map<Two, std::shared_ptr<const Matched>> found_;
    std::shared_ptr<const Matched> result_;
    struct Asked {
        Two two;
        std::uint64_t stamp = 0;
        std::string why_not = {}; ///< see not_done
    };
    std::optional<Asked> asked_;
    DifferenceOrder order_ = DifferenceOrder::by_time;
    std::vector<std::size_t> listed_;
    std::optional<std::size_t> selected_;
    Which looked_at_ = Which::b;
    std::optional<Seconds> place_[2];
    std::vector<project::Pin> pins_;
};

/// Shorter differences, a breath say, are heard with what is around them: own value, enough to know the place
/// by.
inline constexpr Seconds kLeastHeard{1.6};

} // namespace luft::desk
