#include "desk/work/match.h"

#include "files/compared.h"
#include "media/media.h"
#include "profile/gather.h"

#include <algorithm>
#include <bit>

namespace luft::desk {
namespace {

/// FNV-1a, 64 bit (Fowler, Noll & Vo; draft-eastlake-fnv), fed with whole numbers instead of bytes.
class Stamp {
  public:
    void add(std::uint64_t value) { now_ = (now_ ^ value) * 1099511628211U; }
    void add(double value) { add(std::bit_cast<std::uint64_t>(value)); }
    void add(std::string_view text) {
        for (const char c : text)
            add(static_cast<std::uint64_t>(static_cast<unsigned char>(c)));
        add(static_cast<std::uint64_t>(text.size()));
    }
    [[nodiscard]] std::uint64_t now() const { return now_; }

  private:
    std::uint64_t now_ = 14695981039346656037U;
};

void add_mark(Stamp& stamp, const project::Mark& mark) {
    stamp.add(static_cast<std::uint64_t>(mark.what.index()) * 2 +
              (mark.state == project::MarkState::dropped));
    stamp.add(static_cast<std::uint64_t>(mark.state == project::MarkState::kept));
    stamp.add(mark.span().start.value());
    stamp.add(mark.span().end.value());
    stamp.add(mark.confidence().value);
    if (const auto* note = std::get_if<marks::Note>(&mark.what)) {
        stamp.add(note->pitch.value());
        stamp.add(static_cast<std::uint64_t>(note->onset.kind) * 8 +
                  static_cast<std::uint64_t>(note->offset.kind));
    }
    if (const auto* breath = std::get_if<marks::Breath>(&mark.what))
        stamp.add(static_cast<std::uint64_t>(breath->evidence_kind));
    if (const auto* change = std::get_if<marks::Switch>(&mark.what))
        stamp.add(static_cast<std::uint64_t>(change->to));
}

project::Performance performance(const project::Project& project, project::PerformanceId id) {
    const auto all = project.performances();
    const auto it = std::ranges::find(all, id, &project::Performance::id);
    if (it == all.end()) throw Error(Fault::not_found, "The performance isn't in the project any more.");
    if (!project.listening(id))
        throw Error(Fault::bad_request, "'" + it->label + "' hasn't been listened to yet.",
                    "Choose it above, then File, Listen again.");
    return *it;
}

} // namespace

std::uint64_t stamp_of(const project::Project& project, project::PerformanceId a, project::PerformanceId b) {
    Stamp stamp;
    for (const auto& one : project.performances())
        if (one.id == a || one.id == b) stamp.add(one.label);
    for (const auto id : {a, b}) {
        const auto listening = project.listening(id);
        stamp.add(listening ? listening->tuning.value() : 0.0);
        for (const auto& mark : project.marks(id))
            add_mark(stamp, mark);
        for (const auto& word : project.sung_words(id)) {
            stamp.add(word.text);
            stamp.add(word.at.value());
        }
    }
    for (const auto& pin : project.pins(a, b)) {
        stamp.add(pin.a.value());
        stamp.add(pin.b.value());
    }
    return stamp.now();
}

namespace {

std::shared_ptr<const Matched> match_once(const project::Project& project, project::PerformanceId a,
                                          project::PerformanceId b, const Progress& progress,
                                          const Matched* before) {
    auto out = std::make_shared<Matched>();
    const auto first = performance(project, a), second = performance(project, b);
    out->stamp = stamp_of(project, a, b);
    out->a = profile::gather(project, first);
    out->b = profile::gather(project, second);
    compare::AlignOptions options;
    for (const auto& pin : project.pins(a, b))
        options.pins.push_back({pin.a, pin.b});
    bool there = true;
    try {
        for (const auto& one : {first, second})
            (void)media::open_sound(project.media(one));
    } catch (const Error&) {
        there = false;
        out->note = "A recording can't be read: the two are compared by their singing alone.";
    }
    out->comparison = files::compare_performances(project, first, second, there, options, progress,
                                                  before ? &before->comparison : nullptr);
    return out;
}

} // namespace

std::shared_ptr<const Matched> match(const project::Project& project, project::PerformanceId a,
                                     project::PerformanceId b, const Progress& progress,
                                     const Matched* before) {
    auto out = match_once(project, a, b, progress, before);
    // Marks that changed meanwhile would be counted otherwise in the sources than in the comparison.
    while (stamp_of(project, a, b) != out->stamp)
        out = match_once(project, a, b, progress, std::shared_ptr(out).get());
    return out;
}

} // namespace luft::desk
