#include "desk/work/match.h"

#include "files/compared.h"
#include "media/media.h"
#include "profile/gather.h"

#include <algorithm>
#include <bit>
#include <filesystem>

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

/// Whether the recording is where it was linked: Project::media would look elsewhere too, but the window
/// can't wait for that.
bool is_there(const project::Project& project, const project::Performance& one) {
    std::error_code none;
    const auto file = project.file().parent_path() / one.media.path;
    return one.media.carried ||
           std::filesystem::file_size(file, none) == static_cast<std::uintmax_t>(one.media.size);
}

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
                    "Show it on the sheet first (F5), then File, Listen again.");
    return *it;
}

} // namespace

std::uint64_t stamp_of(const project::Project& project, project::PerformanceId a, project::PerformanceId b) {
    Stamp stamp;
    for (const auto& one : project.performances())
        if (one.id == a || one.id == b) {
            stamp.add(one.label);
            stamp.add(one.media.fingerprint);
            stamp.add(one.media.path);
            stamp.add(static_cast<std::uint64_t>(is_there(project, one)));
        }
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
    const auto compare = [&](bool harmony) {
        return files::compare_performances(project, first, second, harmony, options, progress,
                                           before ? &before->comparison : nullptr);
    };
    try {
        for (const auto& one : {first, second}) // said before the first of them is heard to its end
            (void)media::open_sound(project.media(one));
        out->comparison = compare(true);
    } catch (const Error&) { // what isn't the recordings' fault comes again
        out->comparison = compare(false);
        out->note = "A recording can't be read: the two are compared by their singing alone.";
    }
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
