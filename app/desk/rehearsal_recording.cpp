// The coach's voice, while a script is rehearsed.
#include "desk/rehearsal_view.h"
#include "desk/text.h"

namespace luft::desk {

void RehearsalView::guarded(const std::function<void()>& what) {
    try {
        what();
    } catch (const Error& error) {
        wishes_.tell(error);
    }
}

void RehearsalView::switch_recording() {
    if (record_) return stop_recording();
    capture_.start();
    no_microphone_ = capture_.note();
    if (!no_microphone_.empty()) return capture_.stop();
    record_ = true;
    // A talk that has just begun is recorded whole when it begins anew.
    if (rehearsal_->talking() && rehearsal_->elapsed(now()) < Rehearsal::kJustBegun)
        rehearsal_->begin_again(now());
}

void RehearsalView::stop_recording() {
    record_ = false;
    capture_.stop();
    if (takes_) takes_->drop();
}

/// Fetches what was spoken; it goes into the take while a talk runs.
void RehearsalView::take_in() {
    if (!record_) return;
    const auto spoken = capture_.fetch();
    no_microphone_ = capture_.note();
    if (!no_microphone_.empty()) return stop_recording(); // taken away, perhaps in the middle of a talk
    if (takes_->recording() && rehearsal_->state() == Rehearsal::State::running && rehearsal_->talking())
        guarded([&] { takes_->add(spoken); });
}

void RehearsalView::begin_take() {
    const bool another = rehearsal_->talk_turn() != talk_turn_;
    talk_turn_ = rehearsal_->talk_turn();
    if (!rehearsal_->talking()) {
        scrolled_ = 0;
        return takes_->drop(); // left by going back
    }
    if (!another) return;
    scrolled_ = 0;
    takes_->drop();
    const auto item = rehearsal_->segment()->item;
    if (!record_ || !item) return;
    capture_.fetch(); // what was heard of the music
    guarded([&] { takes_->begin(*item); });
}

RecordingShown RehearsalView::recording_shown() const {
    RecordingShown state;
    state.on = record_;
    state.now = takes_->recording();
    state.level = capture_.level();
    state.note = no_microphone_.empty() ? sound_.note() : no_microphone_;
    return state;
}

} // namespace luft::desk
