#include "desk/play/player.h"

#include <algorithm>

namespace luft::desk {

void Player::open(SourceMaker source) {
    open_sound([source = std::move(source)] { return media::open_playable_sound(source()); });
}

void Player::open_pair(SoundMaker pair) {
    open_sound(std::move(pair));
}

void Player::open_sound(SoundMaker sound) {
    close();
    auto engine = std::make_unique<Engine>(sound());
    auto output = make_output_(engine->rate());
    feeder_ = std::make_unique<Feeder>(std::move(sound), std::move(engine), std::move(output), ended_);
}

void Player::close() {
    if (feeder_) feeder_->stop();
    feeder_.reset();
    settings_.loop.reset();
}

void Player::play(Seconds from, std::optional<Span> loop) {
    settings_.loop = loop;
    if (feeder_) feeder_->play(from, settings_);
}

void Player::pause() {
    if (feeder_) feeder_->pause();
}

void Player::resume() {
    if (feeder_) feeder_->resume();
}

void Player::stop() {
    if (feeder_) feeder_->stop();
}

void Player::set_speed(double speed) {
    settings_.speed = std::clamp(speed, signal::Stretcher::kSlowest, 1.0);
    tell();
}

void Player::set_volume(double volume) {
    settings_.volume = std::clamp(volume, 0.0, 1.0);
    tell();
}

void Player::set_tone(std::shared_ptr<const ToneAt> tone) {
    settings_.tone = std::move(tone);
    tell();
}

void Player::set_loop(std::optional<Span> loop) {
    settings_.loop = loop;
    tell();
}

void Player::tell() {
    if (feeder_) feeder_->set(settings_);
}

Seconds Player::position() const {
    return feeder_ ? feeder_->position() : Seconds(0);
}

PlayState Player::state() const {
    return feeder_ ? feeder_->state() : PlayState::stopped;
}

std::string Player::trouble() const {
    return feeder_ ? feeder_->trouble() : std::string();
}

std::string Player::device() const {
    return feeder_ ? feeder_->output().name() : std::string();
}

std::string Player::note() const {
    return feeder_ ? feeder_->output().note() : std::string();
}

} // namespace luft::desk
