// A rehearsal: the programme step by step, halting at each stop, and how long each talk really took.
#pragma once

#include "script/cue_sheet.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace luft::desk {

/// Without a clock and without sound: the caller says what time it is (`now`, seconds of any steady clock)
/// and where the sound is, and plays what `playback` asks for. For one thread.
class Rehearsal {
  public:
    /// A talk that was left sooner is a slip of the key, and isn't measured. Common practice, no source.
    static constexpr Seconds kShortestTalk{0.5};
    /// `back` within this much of a step's start goes to the step before. Common practice, no source.
    static constexpr Seconds kJustBegun{2};
    /// Music that is heard again before a halt. Common practice, no source.
    static constexpr Seconds kRunUp{5};

    enum class State { waiting, running, paused, ended };

    explicit Rehearsal(script::CueSheet sheet) : sheet_(std::move(sheet)) {}

    /// From a step on, index into the cue sheet's segments; measured times stay. Past the last one it has
    /// ended. It goes on at once.
    void begin(Seconds now, std::size_t step = 0);
    /// To the next step: a talk's time is taken as measured, music is left. `recorded` is the length of the
    /// talk's recording, if there is one, which then counts instead of the clock.
    void go_on(Seconds now, std::optional<Seconds> recorded = std::nullopt);
    /// To the beginning of this step; when that is just past, to the step before: its start, or for music
    /// `kRunUp` before its end. A talk that is left so isn't measured.
    void back(Seconds now);
    /// To the beginning of this step, whenever it began.
    void begin_again(Seconds now);
    void pause(Seconds now);
    void resume(Seconds now);
    /// Leaves a talk unmeasured.
    void end();

    /// To be called often. `heard` is where the sound is; none while nothing sounds that should (no device,
    /// broken off, not begun yet): then the clock tells. Music that has reached its end gives way to the next
    /// step.
    void look(Seconds now, std::optional<Seconds> heard);

    /// What is to be heard; of another performance's recording nothing is, only its time passes. `turn` is
    /// another one whenever it must begin anew, at `from`.
    struct Playback {
        bool playing = false;
        Seconds from, to; ///< media time
        double speed = 1;
        int turn = 0;
    };
    [[nodiscard]] const Playback& playback() const { return playback_; }

    [[nodiscard]] State state() const { return state_; }
    [[nodiscard]] const script::CueSheet& sheet() const { return sheet_; }
    [[nodiscard]] std::size_t step() const { return at_; }
    /// The step that it is in; null when waiting or ended.
    [[nodiscard]] const script::Segment* segment() const;
    [[nodiscard]] bool talking() const;
    /// Another performance's recording plays here in the programme: the rehearsal waits as long in silence.
    [[nodiscard]] bool elsewhere() const;
    /// Counts the talks begun: a recorder begins anew when it changes.
    [[nodiscard]] int talk_turn() const { return talk_turn_; }

    /// Of the step: passed, without pauses, and planned. Both are programme time: of music, what it takes to
    /// play.
    [[nodiscard]] Seconds elapsed(Seconds now) const;
    [[nodiscard]] Seconds planned() const;
    [[nodiscard]] Seconds position() const { return position_; } ///< media time, in music

    /// Of the programme: how far it is, with the talks as long as they took, and how long it is planned.
    [[nodiscard]] Seconds programme(Seconds now) const;
    [[nodiscard]] Seconds programme_planned() const;
    /// How much later than planned it is; negative: earlier. A talk in time counts as planned.
    [[nodiscard]] Seconds behind(Seconds now) const;

    [[nodiscard]] int stops() const; ///< how many in all
    /// The step after this one, and the next talk after this step; null when there is none.
    [[nodiscard]] const script::Segment* next() const;
    [[nodiscard]] const script::Segment* next_talk() const;

    /// The aside whose words are to be spoken now, over the music; null when there is none.
    [[nodiscard]] const script::AsideCue* aside() const;
    /// The next one in this step, and how long until then.
    struct Coming {
        const script::AsideCue* aside = nullptr;
        Seconds wait;
    };
    [[nodiscard]] std::optional<Coming> coming_aside() const;

    using Measured = std::map<project::ScriptItemId, Seconds>;
    [[nodiscard]] const Measured& measured() const { return measured_; }
    struct Talk {
        project::ScriptItemId item;
        std::string title;
        Seconds planned;
        std::optional<Seconds> measured;
    };
    /// Every talk of the programme, in order.
    [[nodiscard]] std::vector<Talk> talks() const;

  private:
    void enter(std::size_t step, Seconds now, std::optional<Seconds> from = std::nullopt);
    [[nodiscard]] Seconds in_programme() const;

    script::CueSheet sheet_;
    State state_ = State::waiting;
    std::size_t at_ = 0;
    Playback playback_;
    Seconds position_{0};
    Seconds looked_{0}; ///< when the position was last told
    Seconds began_{0};  ///< when the talk began, or went on after a pause
    Seconds before_{0}; ///< of the talk, before the pause
    int talk_turn_ = 0;
    Measured measured_;
};

} // namespace luft::desk
