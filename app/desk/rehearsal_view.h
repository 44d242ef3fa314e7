// The page on which a script is rehearsed.
#pragma once

#include "base/error.h"
#include "desk/play/capture.h"
#include "desk/rehearsal_page.h"
#include "desk/rehearsal_sound.h"
#include "desk/work/rehearsal.h"
#include "desk/work/session.h"
#include "desk/work/takes.h"

#include <wx/timer.h>
#include <wx/wx.h>

#include <functional>
#include <optional>

namespace luft::desk {

/// Plays, halts at each stop, shows the words, measures the talks and records them if asked; at the end it
/// shows the times, to keep or to discard. It has a clock of its own.
class RehearsalView : public wxWindow {
  public:
    struct Wishes {
        std::function<void()> done; ///< kept or discarded: the page may be left
        std::function<void(const Error&)> tell;
    };

    /// `input` is asked when recording is switched on.
    RehearsalView(wxWindow* parent, Session& session, RehearsalSound sound, Wishes wishes,
                  InputMaker input = open_input);
    ~RehearsalView() override;
    RehearsalView(const RehearsalView&) = delete;
    RehearsalView& operator=(const RehearsalView&) = delete;

    /// Rehearses the script of the performance that is shown, from this step (segment of the sheet) on; one
    /// that runs is abandoned.
    void begin(script::CueSheet sheet, std::size_t step = 0);
    /// A key without modifiers; false when it means nothing here.
    bool key(int code);
    /// It runs, or its times wait to be kept: leaving now would lose them.
    [[nodiscard]] bool busy() const { return rehearsal_.has_value(); }
    /// Talks have been measured and are neither kept nor discarded.
    [[nodiscard]] bool has_times() const { return rehearsal_ && !rehearsal_->measured().empty(); }
    /// Keeps what has been measured until now, and ends.
    void keep();
    /// Stops at once; nothing is kept. To be called before the recording or the project is closed.
    void abandon();

    /// For the window's tests and pictures; none when nothing runs.
    [[nodiscard]] const Rehearsal* rehearsal() const { return rehearsal_ ? &*rehearsal_ : nullptr; }

  private:
    [[nodiscard]] static Seconds now();
    [[nodiscard]] bool ended() const;
    void tick();
    /// After every change of step: what sounds and what is recorded follows.
    void follow();
    void go_on();
    void pause();
    bool summary_key(int code);
    void discard();
    void paint(wxPaintEvent&);
    void wheel(wxMouseEvent& event);
    void scroll(int lines); ///< by hand
    [[nodiscard]] RecordingShown recording_shown() const;
    [[nodiscard]] wxRect summary_area() const;

    // rehearsal_recording.cpp
    void switch_recording();
    void stop_recording();
    void take_in();
    void begin_take();
    void guarded(const std::function<void()>& what);

    Session& session_;
    RehearsalSound sound_;
    Wishes wishes_;
    Capture capture_;
    bool record_ = false;
    std::string no_microphone_; ///< why nothing can be recorded; empty when all is well
    std::optional<Rehearsal> rehearsal_;
    std::optional<Takes> takes_;
    RehearsalPage page_;
    int turn_ = 0;      ///< of the playback that was begun
    int talk_turn_ = 0; ///< of the talk that was begun
    int scrolled_ = 0;  ///< by hand: lines of the words, rows of the summary
    double wheel_ = 0;  ///< parts of a notch
    Seconds painted_{0};
    wxTimer timer_;
    wxButton* keep_ = nullptr;
    wxButton* discard_ = nullptr;
};

} // namespace luft::desk
