#include "desk/pair_sound.h"

#include <algorithm>
#include <utility>

namespace luft::desk {
namespace {

constexpr Seconds kRunUp{0.3}; ///< heard before a span, so that its start isn't cut off

} // namespace

void PairSound::set(const project::Performance& a, const project::Performance& b) {
    const auto same = [](const project::Performance& x, const project::Performance& y) {
        return x.id == y.id && x.media.fingerprint == y.media.fingerprint && x.media.path == y.media.path;
    };
    if (same(a, performances_[0]) && same(b, performances_[1])) return;
    stop();
    open_.reset();
    performances_ = {a, b};
}

void PairSound::set_together(std::shared_ptr<const Matched> matched, bool transposed) {
    if (matched == matched_ && transposed == transposed_) return;
    matched_ = std::move(matched);
    transposed_ = transposed;
    if (!open_ || !open_->both) return;
    stop(); // it would sound as before
    open_.reset();
}

void PairSound::begin(const project::Project& project, const Sound& sound, Seconds own) {
    if (playing_.playing()) playing_.pause();
    which_.reset();
    paused_ = false;
    if (open_ != sound) {
        open_.reset();
        borrowed_ = true; // even if opening fails: the player is closed then
        if (sound.both)
            playing_.open_pair(project, matched_, transposed_);
        else
            playing_.open(project, performances_[sheet::index_of(sound.which)]);
        open_ = sound;
    }
    which_ = sound.which;
    playing_.play(std::max(Seconds(0), own));
}

void PairSound::begin(const project::Project& project, const Turn& turn) {
    begin(project, {turn.which, turn.both && matched_}, turn.span.start - kRunUp);
}

void PairSound::start(const project::Project& project, std::deque<Turn> turns) {
    turns_.start(std::move(turns));
    if (const auto now = turns_.now()) begin(project, *now);
}

void PairSound::play_from(const project::Project& project, Which which, Seconds own) {
    turns_.clear();
    begin(project, {which, which == Which::a && playing() && open_ && open_->both}, own);
}

void PairSound::pause() {
    if (!playing()) return;
    playing_.pause();
    paused_ = true;
}

void PairSound::stop() {
    pause();
    turns_.clear();
    which_.reset();
    paused_ = false;
}

bool PairSound::resume() {
    if (!paused_ || !which_) return false;
    paused_ = false;
    playing_.play(playing_.position());
    return true;
}

void PairSound::look(const project::Project& project) {
    if (!which_) return;
    playing_.look();
    if (!turns_.now() || paused_ || !turns_.over(position() - kRunUp, playing())) return;
    if (const auto next = turns_.now())
        begin(project, *next);
    else if (playing())
        playing_.pause();
}

bool PairSound::release() {
    stop();
    open_.reset();
    return std::exchange(borrowed_, false);
}

} // namespace luft::desk
