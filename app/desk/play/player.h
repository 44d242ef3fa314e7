// Playing a recording: the one thing that the window talks to.
#pragma once

#include "desk/play/feeder.h"

#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace luft::desk {

/// Plays one recording from any place, round a loop, slower at the same pitch, with a reference tone. Use it
/// from one thread; the work is done on another, and a change is heard within 200 ms: `play`, `pause` and
/// `stop` at once (where the file can be gone to quickly: see media::PlayableSound), the settings after
/// Feeder::kAhead and the device's delay.
class Player {
  public:
    explicit Player(OutputMaker output = open_output) : make_output_(std::move(output)) {}

    /// `source` is called here and, after the sound has broken off, again on the player's thread, where the
    /// bytes are read. The settings stay as they are, but for the loop, which goes. Throws as
    /// media::open_playable_sound, and then nothing is open.
    void open(SourceMaker source);
    /// Two performances in step instead, A left and B right: a together::InStep, which for a pair of a
    /// project files::open_in_step makes. Everything below is then in A's time; B's is the alignment's
    /// to_b(position()), none where the right is silent. `pair` is called as `source` above.
    void open_pair(SoundMaker pair);
    void close();
    [[nodiscard]] bool is_open() const { return feeder_ != nullptr; }

    /// From this media time on: past the end it ends at once. With a loop that ends before it, from the
    /// loop's start.
    void play(Seconds from, std::optional<Span> loop = std::nullopt);
    void pause();
    void resume();
    void stop();

    /// 0.25 to 1; others are taken for the nearest.
    void set_speed(double speed);
    /// 0 to 1, a factor on the amplitude; others are taken for the nearest.
    void set_volume(double volume);
    /// Null: none. See ToneAt for the thread that asks it.
    void set_tone(std::shared_ptr<const ToneAt> tone);
    /// None: plays on. What lies before the loop is played first, what lies after it is left at once.
    void set_loop(std::optional<Span> loop);
    [[nodiscard]] const Settings& settings() const { return settings_; }

    /// The media time that sounds now; where it was when stopped, the end when ended. 0 when nothing is open.
    [[nodiscard]] Seconds position() const;
    [[nodiscard]] PlayState state() const;
    /// Why the sound broke off, with advice, in sentences; empty when it didn't. Cleared by `play`.
    [[nodiscard]] std::string trouble() const;

    /// What plays, for a person; empty when nothing is open.
    [[nodiscard]] std::string device() const;
    /// Why nothing is to be heard, with advice, in sentences; empty when all is well.
    [[nodiscard]] std::string note() const;

    /// Called when the sound has ended or broken off and the last of it has sounded. It comes from the
    /// player's own thread: hand it over to yours and call nothing of the player in it. Set it before `open`.
    void on_ended(std::function<void()> ended) { ended_ = std::move(ended); }

  private:
    void open_sound(SoundMaker sound);
    void tell();

    OutputMaker make_output_;
    std::function<void()> ended_;
    Settings settings_;
    std::unique_ptr<Feeder> feeder_;
};

} // namespace luft::desk
