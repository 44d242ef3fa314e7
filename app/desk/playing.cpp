#include "desk/playing.h"

#include "files/in_step_file.h"

#include <cmath>

namespace luft::desk {
namespace {

/// The pitch of the tone over time, from what is known of the performance now: the player's thread reads it
/// later.
std::shared_ptr<const ToneAt> tone_of(ToneKind tone, const profile::Source& source) {
    if (tone == ToneKind::off) return nullptr;
    if (tone == ToneKind::sung)
        return std::make_shared<const ToneAt>([f0 = source.curves.f0](Seconds t) { return f0.at(t); });
    struct Held {
        Span span;
        Hertz pitch;
    };
    std::vector<Held> notes;
    const Hertz a4 = source.listening ? source.listening->tuning : Hertz(440);
    for (const auto& mark : source.marks)
        if (const auto* note = std::get_if<marks::Note>(&mark.what)) {
            const double at_own_tuning = pitch_of(frequency_of(note->pitch), a4).value();
            notes.push_back({note->span, frequency_of(MidiPitch(std::round(at_own_tuning)), a4)});
        }
    return std::make_shared<const ToneAt>([notes = std::move(notes)](Seconds t) -> std::optional<Hertz> {
        auto after = std::ranges::upper_bound(notes, t, {}, [](const Held& n) { return n.span.start; });
        if (after == notes.begin()) return std::nullopt;
        --after;
        return after->span.contains(t) ? std::optional(after->pitch) : std::nullopt;
    });
}

} // namespace

void Playing::open(const Session& session) {
    open(session.project(), session.source().performance);
    set_tone(tone_, session);
}

void Playing::open(const project::Project& project, const project::Performance& performance) {
    close();
    const auto& file = project.file();
    // Said now, not when the play button is pressed.
    (void)project.media(performance);
    player_.open([file, performance] {
        // The player's thread reads over a connection of its own.
        return project::Project::open(file, project::Access::read).media(performance);
    });
    settle();
}

void Playing::open_pair(const project::Project& project, std::shared_ptr<const Matched> matched,
                        bool transposed) {
    close();
    player_.open_pair([file = project.file(), matched = std::move(matched), transposed] {
        const auto& c = matched->comparison;
        return files::open_in_step(project::Project::open(file, project::Access::read), c.a, c.b, c.alignment,
                                   transposed);
    });
    settle();
}

void Playing::settle() {
    open_ = true;
    player_.set_volume(volume_);
    player_.set_speed(speed_ / 100.0);
    player_.set_tone(nullptr); // it would go by another performance's pitch
}

void Playing::close() {
    player_.close();
    open_ = played_ = false;
    resting_ = Seconds(0);
    loop_.reset();
}

void Playing::play(Seconds from) {
    if (!open_) return;
    player_.play(from, loop_);
    played_ = true;
}

void Playing::pause() {
    resting_ = player_.position();
    player_.pause();
    played_ = false;
}

bool Playing::playing() const {
    return open_ && player_.state() == PlayState::playing;
}

Seconds Playing::position() const {
    return playing() ? player_.position() : resting_;
}

void Playing::look() {
    const bool now = playing();
    if (played_ && !now) resting_ = player_.position();
    played_ = now;
}

void Playing::go_to(Seconds time) {
    resting_ = time;
    if (playing()) player_.play(time, loop_);
}

void Playing::set_speed(int percent) {
    speed_ = percent;
    player_.set_speed(percent / 100.0);
}

void Playing::set_volume(double share) {
    volume_ = share;
    player_.set_volume(share);
}

void Playing::set_loop(std::optional<Span> span) {
    loop_ = span;
    player_.set_loop(span);
}

void Playing::set_tone(ToneKind tone, const Session& session) {
    tone_ = tone;
    player_.set_tone(tone_of(tone, session.source()));
}

std::string Playing::note() const {
    if (!open_) return {};
    return player_.trouble().empty() ? player_.note() : player_.trouble();
}

bool Playing::silent() const {
    return open_ && player_.trouble().empty() && !player_.note().empty();
}

} // namespace luft::desk
