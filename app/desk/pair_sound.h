// The sound of two performances, one after the other or both at once, on the window's one player: some sound
// systems have only one device to give.
#pragma once

#include "desk/playing.h"
#include "desk/work/turns.h"

#include <array>
#include <deque>
#include <optional>

namespace luft::desk {

class PairSound {
  public:
    using Which = sheet::Which;

    /// The player must outlive it.
    explicit PairSound(Playing& playing) : playing_(playing) {}

    /// Which two; with others than before what plays ends.
    void set(const project::Performance& a, const project::Performance& b);
    /// How both are played at once; null while that isn't known.
    void set_together(std::shared_ptr<const Matched> matched, bool transposed);

    /// Plays these from now on. Throws Error when a recording can't be opened; then nothing plays.
    void start(const project::Project& project, std::deque<Turn> turns);
    /// From a place on, without end; both go on together when that is what sounds.
    void play_from(const project::Project& project, Which which, Seconds own);
    void pause();
    /// So that nothing is left to go on with.
    void stop();
    /// Goes on where it was paused; false when nothing was.
    bool resume();
    /// To be called often: goes on to the next turn.
    void look(const project::Project& project);
    /// Stops, and lets go of the player. Whether it holds something else, or nothing, than when it was lent.
    bool release();

    [[nodiscard]] bool playing() const { return which_ && playing_.playing(); }
    /// Whether spans are being played, not on and on.
    [[nodiscard]] bool in_turns() const { return turns_.now().has_value(); }
    /// What sounds, or would go on.
    [[nodiscard]] std::optional<Which> which() const { return which_; }
    [[nodiscard]] Seconds position() const { return which_ ? playing_.position() : Seconds(0); }
    /// Why nothing is heard; empty when it is.
    [[nodiscard]] std::string note() const { return which_ ? playing_.note() : std::string(); }

  private:
    struct Sound {
        Which which = Which::a;
        bool both = false;
        bool operator==(const Sound&) const = default;
    };
    void begin(const project::Project& project, const Sound& sound, Seconds own);
    void begin(const project::Project& project, const Turn& turn);

    Playing& playing_;
    std::optional<Sound> open_; ///< in the player, and still what is wanted
    bool borrowed_ = false;     ///< something was opened in the player, or was to be
    std::shared_ptr<const Matched> matched_;
    bool transposed_ = true;
    std::array<project::Performance, 2> performances_;
    Turns turns_;
    std::optional<Which> which_;
    bool paused_ = false;
};

} // namespace luft::desk
