#include "project/note_places.h"

#include <algorithm>
#include <limits>

namespace luft::project {
namespace {

constexpr double kSpare = 1, kFurther = 0.7, kInside = 1.5, kLacking = 1; ///< a note
constexpr double kShort = 1, kIntoPhrase = 3, kHeld = 0.3, kShortEnd = 0.25;
constexpr double kOfHeldEnd = 0.6; ///< of a line's last note is there to be shared
constexpr std::size_t kMostNotes = 60;

std::vector<Seconds> shared(std::size_t syllables, bool ends_line, std::span<const SungNote> notes) {
    std::vector<int> on(notes.size(), 1);
    for (std::size_t left = syllables - notes.size(); left > 0; --left) {
        std::size_t best = 0;
        const auto share = [&](std::size_t i) {
            const bool held = ends_line && i + 1 == notes.size();
            return notes[i].span.length() * (held ? kOfHeldEnd : 1) / (on[i] + 1.0);
        };
        for (std::size_t i = 1; i < notes.size(); ++i)
            if (share(i) > share(best)) best = i;
        ++on[best];
    }
    std::vector<Seconds> places;
    for (std::size_t i = 0; i < notes.size(); ++i)
        for (int k = 0; k < on[i]; ++k)
            places.push_back(notes[i].span.start + notes[i].span.length() * (double(k) / on[i]));
    return places;
}

/// What it costs to sing a syllable on notes `from` up to, not with, `to`.
class Costs {
  public:
    explicit Costs(std::span<const SungNote> notes) : notes_(notes), held_{Seconds(0)}, begins_{0} {
        std::vector<double> lengths;
        for (const SungNote& note : notes) {
            lengths.push_back(note.span.length().value());
            held_.push_back(held_.back() + note.span.length());
            begins_.push_back(begins_.back() + (note.begins_phrase ? 1 : 0));
        }
        longest_ = Seconds(std::ranges::max(lengths));
        std::ranges::nth_element(lengths, lengths.begin() + static_cast<std::ptrdiff_t>(lengths.size() / 2));
        half_ = Seconds(lengths[lengths.size() / 2] / 2);
    }

    [[nodiscard]] double of(const Syllable& syllable, std::size_t from, std::size_t to) const {
        const auto sung = static_cast<int>(to - from);
        const int more = std::max(0, sung - syllable.notes), less = std::max(0, syllable.notes - sung);
        const double spare = more > 0 ? kSpare + (more - 1) * kFurther : 0;
        double cost = spare * (syllable.joins ? kInside : 1) + less * kLacking;
        if (half_ > Seconds(0)) cost += kShort * std::max(0.0, 1 - notes_[from].span.length() / half_);
        cost += kIntoPhrase * (begins_[to] - begins_[from + 1]);
        if (more > 0 && held_.back() > Seconds(0)) cost -= kHeld * ((held_[to] - held_[from]) / held_.back());
        if (syllable.ends_line && longest_ > Seconds(0))
            cost += kShortEnd * std::max(0.0, 1 - (held_[to] - held_[from]) / longest_);
        return cost;
    }

  private:
    std::span<const SungNote> notes_;
    std::vector<Seconds> held_; ///< time of all notes before
    std::vector<int> begins_;   ///< phrases begun before
    Seconds half_;              ///< of the median note
    Seconds longest_;           ///< note
};

} // namespace

std::vector<Seconds> places_on_notes(std::span<const Syllable> syllables, std::span<const SungNote> notes) {
    if (syllables.empty() || notes.empty()) return {};
    const std::size_t m = syllables.size(), n = notes.size();
    if (m > n) return shared(m, syllables.back().ends_line, notes);
    const Costs costs(notes);
    constexpr double kNever = std::numeric_limits<double>::infinity();
    const std::size_t most = kMostNotes + 3 * (n / m); // on one syllable; also when an hour is one phrase
    // before and now: the cheapest way for one syllable less, and for i syllables, to take the first j notes.
    std::vector<double> before(n + 1, kNever), now;
    std::vector<std::vector<std::uint32_t>> began(m + 1, std::vector<std::uint32_t>(n + 1, 0));
    before[0] = 0;
    for (std::size_t i = 1; i <= m; ++i, std::swap(before, now)) {
        now.assign(n + 1, kNever);
        for (std::size_t j = i; j <= n - (m - i); ++j)
            for (std::size_t from = std::max(i - 1, j - std::min(j, most)); from < j; ++from) {
                const double cost = before[from] + costs.of(syllables[i - 1], from, j);
                if (cost >= now[j]) continue;
                now[j] = cost;
                began[i][j] = static_cast<std::uint32_t>(from);
            }
    }
    std::vector<Seconds> places(m);
    for (std::size_t i = m, j = n; i > 0; --i) {
        j = began[i][j];
        places[i - 1] = notes[j].span.start;
    }
    return places;
}

} // namespace luft::project
