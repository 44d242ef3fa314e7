// The bar under the sheet: play, where it is, speed, loop, volume.
#pragma once

#include "base/units.h"
#include "desk/commands.h"

#include <wx/wx.h>

#include <functional>

namespace luft::desk {

/// Speeds that the bar and the keys step through, in percent.
inline constexpr int kSpeeds[] = {25, 40, 50, 60, 75, 90, 100};

class Transport : public wxPanel {
  public:
    struct Wishes {
        std::function<void(Do)> run;
        std::function<void(int percent)> speed;
        std::function<void(double share)> volume;
    };
    Transport(wxWindow* parent, Wishes wishes);

    void show_time(Seconds now, Seconds length);
    void show_playing(bool playing);
    void show_speed(int percent);
    void show_loop(bool on);
    void enable_loop(bool on);
    /// A few words about the sound: that there is none, or why it broke off; `whole` says it in full.
    void show_note(const wxString& note, const wxString& whole = "");
    void enable(bool there_is_something_to_play);
    void set_volume(double share);

  private:
    Wishes wishes_;
    wxButton* play_;
    wxStaticText* time_;
    wxChoice* speed_;
    wxCheckBox* loop_;
    wxSlider* volume_;
    wxStaticText* note_;
    wxString shown_time_;
};

} // namespace luft::desk
