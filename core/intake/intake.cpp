#include "intake/intake.h"

#include "base/error.h"
#include "base/text.h"
#include "profile/gather.h"
#include "profile/propose.h"
#include "project/spread_words.h"

#include <algorithm>
#include <utility>

namespace luft::intake {
namespace {

/// Said before the listening, not after it.
void refuse_second(const project::Project& project, const std::string& label) {
    if (!label.empty() &&
        std::ranges::any_of(project.performances(), [&](const auto& one) { return one.label == label; }))
        throw Error(Fault::bad_request, "There is already a performance '" + label + "' in this project.",
                    "Give it another label.");
}

int propose(project::Project& project, const project::Performance& performance) {
    return project.propose_moments(performance.id,
                                   profile::propose_moments(profile::gather(project, performance)));
}

} // namespace

project::MediaFacts facts_of(const media::Facts& facts) {
    project::MediaFacts kept;
    kept.duration = facts.duration;
    if (facts.audio) {
        kept.sample_rate_hz = facts.audio->format.rate.per_second;
        kept.channels = static_cast<int>(facts.audio->format.channels.size());
    }
    if (facts.video) {
        kept.has_video = true;
        kept.frame_rate_num = facts.video->frame_rate.num();
        kept.frame_rate_den = facts.video->frame_rate.den();
    }
    return kept;
}

media::Facts probe(std::unique_ptr<ByteSource> bytes, bool partial, const std::string& remedy) {
    const std::string name = bytes->name();
    media::Facts facts = media::probe(std::move(bytes));
    if (facts.cut_off_from && !partial)
        throw Error(Fault::unreadable,
                    "'" + name + "' is cut off: it announces " + clock_text(*facts.cut_off_from) +
                        " and ends at " + clock_text(facts.duration) + ".",
                    "Copy it again from where it came, or " + remedy);
    return facts;
}

Heard hear(const std::function<std::unique_ptr<ByteSource>()>& open, const Listening& options,
           const std::string& remedy, const Progress& progress) {
    progress.step(0, "opening the recording");
    const media::Facts facts = probe(open(), options.partial, remedy);
    const auto sound = media::open_sound(open());
    return {facts_of(facts), marks::listen(*sound, {options.accompaniment}, progress)};
}

Added add(project::Project& project, const Recording& recording, const Progress& progress) {
    refuse_second(project, recording.details.label);
    const auto open = [&] { return open_file(recording.media); };
    Added added;
    project::Performance details = recording.details;
    if (recording.listen) {
        added.heard = hear(open, recording.listening, recording.remedy, progress.part(0, 0.9));
        details.facts = added.heard->facts;
    } else {
        details.facts = facts_of(probe(open(), recording.listening.partial, recording.remedy));
    }
    if (details.facts.channels == 0)
        throw Error(Fault::unreadable, "'" + recording.media.string() + "' has no sound.",
                    "A performance needs a recording that can be heard.");

    const auto id = project.add_performance(recording.media, recording.carry, details,
                                            progress.part(added.heard ? 0.9 : 0, 1));
    const auto all = project.performances();
    added.performance = *std::ranges::find(all, id, &project::Performance::id);
    if (added.heard) {
        project.store_listening(id, added.heard->analysis);
        added.proposed = propose(project, added.performance);
        project::spread_sung_words(project, id);
    }
    return added;
}

Added store_again(project::Project& project, const project::Performance& performance, Heard heard) {
    Added added{performance, std::move(heard), 0};
    project.store_listening(performance.id, added.heard->analysis);
    added.proposed = propose(project, performance);
    project::spread_sung_words(project, performance.id);
    return added;
}

Added listen_again(project::Project& project, const project::Performance& performance,
                   marks::Accompaniment accompaniment, const Progress& progress) {
    // Whether it may be partial was decided when it was added.
    return store_again(project, performance,
                       hear([&] { return project.media(performance, false, {}, progress); },
                            {accompaniment, true}, {}, progress));
}

} // namespace luft::intake
