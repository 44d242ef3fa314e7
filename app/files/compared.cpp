#include "files/compared.h"

#include "media/media.h"

namespace luft::files {
namespace {

std::optional<compare::Harmony> heard_before(const compare::Comparison* before,
                                             const project::Performance& performance, Hertz tuning) {
    if (before)
        for (const auto& [who, side] :
             {std::pair(&before->a, &before->side_a), std::pair(&before->b, &before->side_b)})
            if (who->id == performance.id && who->media.fingerprint == performance.media.fingerprint &&
                side->tuning == tuning)
                return side->harmony;
    return std::nullopt;
}

compare::Side side_of(const project::Project& project, const project::Performance& performance, bool harmony,
                      const Progress& progress, const compare::Comparison* before) {
    const auto listening = project.listening(performance.id);
    if (!listening)
        throw Error(Fault::bad_request, "'" + performance.label + "' hasn't been listened to yet.",
                    "Run 'luftpause listen' on the project first.");
    compare::Side side =
        compare::side_of(listening, project.curves(performance.id), project.marks(performance.id));
    if (harmony) side.harmony = heard_before(before, performance, side.tuning);
    if (harmony && !side.harmony)
        side.harmony = compare::hear_harmony(
            *media::open_sound(project.media(performance, false, {}, progress)), side.tuning, progress);
    return side;
}

} // namespace

std::vector<compare::Pair> pins_of(const project::Project& project, const project::Performance& a,
                                   const project::Performance& b) {
    std::vector<compare::Pair> pins;
    for (const project::Pin& pin : project.pins(a.id, b.id))
        pins.push_back({pin.a, pin.b});
    return pins;
}

compare::Comparison compare_performances(const project::Project& project, const project::Performance& a,
                                         const project::Performance& b, bool harmony,
                                         const compare::AlignOptions& options, const Progress& progress,
                                         const compare::Comparison* before) {
    if (a.id == b.id)
        throw Error(Fault::bad_request, "'" + a.label + "' can't be compared with itself.",
                    "Name two performances.");
    compare::Comparison out{project.piece(),         a, b, {}, {}, {}, {}, {}, project.sung_words(a.id),
                            project.sung_words(b.id)};
    out.side_a = side_of(project, a, harmony, progress.part(0, 0.4), before);
    out.side_b = side_of(project, b, harmony, progress.part(0.4, 0.8), before);
    out.alignment = compare::align(out.side_a, out.side_b, options, progress.part(0.8, 0.96));
    progress.step(0.96, "finding counterparts");
    out.counterparts = compare::find_counterparts(out.side_a, out.side_b, out.alignment);
    progress.step(0.98, "finding differences");
    out.differences = compare::find_differences(out.side_a, out.side_b, out.alignment, out.counterparts,
                                                {a.label, b.label, out.words_a, out.words_b});
    return out;
}

} // namespace luft::files
