#include "desk/transport.h"

#include "base/text.h"
#include "desk/text.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace luft::desk {

Transport::Transport(wxWindow* parent, Wishes wishes)
    : wxPanel(parent, wxID_ANY), wishes_(std::move(wishes)) {
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    const int gap = FromDIP(8);
    const auto add = [&](wxWindow* window) {
        row->Add(window, 0, wxALIGN_CENTRE_VERTICAL | wxLEFT | wxTOP | wxBOTTOM, FromDIP(5));
    };
    play_ = new wxButton(this, wxID_ANY, "Play", wxDefaultPosition, FromDIP(wxSize(90, -1)));
    play_->SetToolTip("Play or pause  (Space)");
    add(play_);
    time_ = new wxStaticText(this, wxID_ANY, "0:00.0 of 0:00.0", wxDefaultPosition, FromDIP(wxSize(150, -1)),
                             wxST_NO_AUTORESIZE);
    add(time_);
    add(new wxStaticText(this, wxID_ANY, "Speed"));
    wxArrayString speeds;
    for (const int percent : kSpeeds)
        speeds.Add(wxString::Format("%d %%", percent));
    speed_ = new wxChoice(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, speeds);
    speed_->SetSelection(static_cast<int>(std::size(kSpeeds)) - 1);
    speed_->SetToolTip("At the same pitch  (- and +)");
    add(speed_);
    loop_ = new wxCheckBox(this, wxID_ANY, "Loop");
    loop_->SetToolTip("The selection, or the phrase at the playhead  (L)");
    add(loop_);
    add(new wxStaticText(this, wxID_ANY, "Volume"));
    volume_ = new wxSlider(this, wxID_ANY, 80, 0, 100, wxDefaultPosition, FromDIP(wxSize(110, -1)));
    add(volume_);
    note_ = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
    row->Add(note_, 1, wxALIGN_CENTRE_VERTICAL | wxLEFT, gap);
    SetSizer(row);

    play_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { wishes_.run(Do::play); });
    loop_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) { wishes_.run(Do::loop); });
    speed_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) { wishes_.speed(kSpeeds[event.GetInt()]); });
    volume_->Bind(wxEVT_SLIDER, [this](wxCommandEvent& event) { wishes_.volume(event.GetInt() / 100.0); });
}

void Transport::show_time(Seconds now, Seconds length) {
    const wxString text = shown(clock_text(now) + " of " + clock_text(length));
    if (text == shown_time_) return;
    shown_time_ = text;
    time_->SetLabelText(text);
}

void Transport::show_playing(bool playing) {
    play_->SetLabel(playing ? "Pause" : "Play");
}

void Transport::show_speed(int percent) {
    const auto at = std::ranges::find(kSpeeds, percent);
    if (at != std::end(kSpeeds)) speed_->SetSelection(static_cast<int>(at - std::begin(kSpeeds)));
}

void Transport::show_loop(bool on) {
    loop_->SetValue(on);
}

void Transport::enable_loop(bool on) {
    loop_->Enable(on);
}

void Transport::show_note(const wxString& note, const wxString& whole) {
    note_->SetLabelText(note);
    note_->SetToolTip(whole.empty() ? note : whole);
}

void Transport::set_volume(double share) {
    volume_->SetValue(static_cast<int>(std::lround(share * 100)));
}

void Transport::enable(bool there_is_something_to_play) {
    Enable(there_is_something_to_play);
}

} // namespace luft::desk
