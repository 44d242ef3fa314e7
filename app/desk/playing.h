// The sound of the performance that is shown.
#pragma once

#include "desk/play/player.h"
#include "desk/work/match.h"
#include "desk/work/session.h"

#include <memory>
#include <optional>
#include <string>

namespace luft::desk {

enum class ToneKind { off, sung, ideal };

class Playing {
  public:
    /// The performance that is shown, with its tone. Throws Error when its recording can't be opened.
    void open(const Session& session);
    /// Any other, without a tone. Throws the same.
    void open(const project::Project& project, const project::Performance& performance);
    /// Two in step, A left and B right (together/in_step.h), at A's time; `transposed`: B in A's key.
    void open_pair(const project::Project& project, std::shared_ptr<const Matched> matched, bool transposed);
    void close();
    [[nodiscard]] bool can_play() const { return open_; }

    void play(Seconds from);
    void pause();
    [[nodiscard]] bool playing() const;
    /// Where the sound is, or would go on.
    [[nodiscard]] Seconds position() const;
    void go_to(Seconds time);
    /// To be called often: keeps the place where the sound has ended by itself.
    void look();

    void set_speed(int percent);
    [[nodiscard]] int speed() const { return speed_; }
    void set_volume(double share);
    [[nodiscard]] double volume() const { return volume_; }
    void set_loop(std::optional<Span> span);
    [[nodiscard]] const std::optional<Span>& loop() const { return loop_; }
    /// Follows the notes and the pitch of the performance as they are now.
    void set_tone(ToneKind tone, const Session& session);
    /// For the next time that the performance is opened or set_tone called; what sounds stays as it is.
    void keep_tone(ToneKind tone) { tone_ = tone; }
    [[nodiscard]] ToneKind tone() const { return tone_; }

    /// Why nothing is heard; empty when it is.
    [[nodiscard]] std::string note() const;
    /// It plays, but there is no device to hear it from.
    [[nodiscard]] bool silent() const;

  private:
    void settle();

    Player player_;
    bool open_ = false;
    bool played_ = false; ///< when last looked at
    Seconds resting_{0};  ///< where it goes on when it doesn't play
    int speed_ = 100;
    double volume_ = 0.8;
    std::optional<Span> loop_;
    ToneKind tone_ = ToneKind::off;
};

} // namespace luft::desk
