#include "desk/rehearsal_view.h"

#include "desk/rehearsal_summary.h"
#include "desk/sheet_view.h"
#include "desk/work/keep_times.h"
#include "script/voices.h"

#include <wx/dcbuffer.h>

#include <algorithm>
#include <chrono>
#include <utility>

namespace luft::desk {
namespace {

constexpr int kTick = 16;           ///< ms: once a frame of the screen
constexpr Seconds kPaintEvery{0.1}; ///< while nothing but time goes on

} // namespace

RehearsalView::RehearsalView(wxWindow* parent, Session& session, RehearsalSound sound, Wishes wishes,
                             InputMaker input)
    : wxWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxWANTS_CHARS | wxFULL_REPAINT_ON_RESIZE),
      session_(session), sound_(std::move(sound)), wishes_(std::move(wishes)), capture_(std::move(input)),
      timer_(this) {
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    auto* column = new wxBoxSizer(wxVERTICAL);
    column->AddStretchSpacer();
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    const auto button = [&](const wxString& words, void (RehearsalView::*what)()) {
        auto* made = new wxButton(this, wxID_ANY, words, wxDefaultPosition, FromDIP(wxSize(260, 44)));
        made->DisableFocusFromKeyboard(); // a second press of Space at the end must not choose
        made->Bind(wxEVT_BUTTON, [this, what](wxCommandEvent&) { (this->*what)(); });
        made->Hide();
        row->Add(made, 0, wxALL, FromDIP(12));
        return made;
    };
    row->AddStretchSpacer();
    keep_ = button("Keep these times  (K)", &RehearsalView::keep);
    discard_ = button("Discard  (D)", &RehearsalView::discard);
    row->AddStretchSpacer();
    column->Add(row, 0, wxEXPAND | wxBOTTOM, FromDIP(16));
    SetSizer(column);
    Bind(wxEVT_PAINT, &RehearsalView::paint, this);
    Bind(wxEVT_MOUSEWHEEL, &RehearsalView::wheel, this);
    Bind(wxEVT_TIMER, [this](wxTimerEvent&) { tick(); });
    Bind(wxEVT_SHOW, [this](wxShowEvent& event) {
        event.Skip();
        // Another page is looked at: nothing plays on unseen.
        if (!event.IsShown() && rehearsal_ && rehearsal_->state() == Rehearsal::State::running) key('P');
    });
    session_.watch([this](const Session::Change& change) {
        if (change.project || change.shown) abandon();
    });
}

RehearsalView::~RehearsalView() = default;

Seconds RehearsalView::now() {
    return Seconds(
        std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count());
}

bool RehearsalView::ended() const {
    return rehearsal_ && rehearsal_->state() == Rehearsal::State::ended;
}

void RehearsalView::begin(script::CueSheet sheet, std::size_t step) {
    abandon();
    takes_.emplace(script::voice_folder(session_.project().file()));
    rehearsal_.emplace(std::move(sheet));
    turn_ = talk_turn_ = 0;
    no_microphone_.clear();
    rehearsal_->begin(now(), step);
    timer_.Start(kTick);
    follow();
    SetFocus();
}

void RehearsalView::abandon() {
    if (!rehearsal_) return;
    timer_.Stop();
    stop_recording();
    takes_.reset();
    rehearsal_.reset();
    sound_.release();
    keep_->Hide();
    discard_->Hide();
    Refresh();
}

void RehearsalView::tick() {
    if (!rehearsal_ || ended()) return;
    take_in();
    const auto step = rehearsal_->step();
    rehearsal_->look(now(), sound_.heard());
    if (rehearsal_->step() != step || ended()) return follow();
    if (now() - painted_ >= kPaintEvery) Refresh(false);
}

void RehearsalView::follow() {
    const auto& wanted = rehearsal_->playback();
    if (!wanted.playing)
        sound_.pause();
    else if (wanted.turn != turn_)
        sound_.play(wanted.from, wanted.speed);
    turn_ = wanted.turn;
    begin_take();
    if (ended()) {
        timer_.Stop();
        stop_recording();
        sound_.release();
        keep_->Show(!rehearsal_->measured().empty());
        discard_->SetLabel(rehearsal_->measured().empty() ? "Close  (D)" : "Discard  (D)");
        discard_->Show();
        Layout();
        scrolled_ = 0;
    }
    Refresh(false);
}

void RehearsalView::go_on() {
    take_in();
    std::optional<Seconds> recorded;
    if (rehearsal_->talking() && takes_->recording()) recorded = takes_->end();
    rehearsal_->go_on(now(), recorded);
}

void RehearsalView::pause() {
    take_in(); // what was said until now
    if (rehearsal_->state() == Rehearsal::State::paused)
        rehearsal_->resume(now());
    else
        rehearsal_->pause(now());
}

bool RehearsalView::key(int code) {
    if (!rehearsal_) return false;
    if (ended()) return summary_key(code);
    switch (code) {
    case WXK_SPACE:
    case WXK_PAGEDOWN: // what a presenter's remote control sends
        go_on();
        break;
    case WXK_BACK:
    case WXK_PAGEUP:
        rehearsal_->back(now());
        break;
    case 'P':
        pause();
        break;
    case 'R':
        switch_recording();
        break;
    case WXK_ESCAPE:
        rehearsal_->end();
        break;
    case WXK_DOWN:
    case WXK_UP:
        scroll(code == WXK_DOWN ? 1 : -1);
        break;
    default:
        return false;
    }
    follow();
    return true;
}

bool RehearsalView::summary_key(int code) {
    if (code == 'K' && keep_->IsShown())
        keep();
    else if (code == 'D' || (code == WXK_ESCAPE && !keep_->IsShown()))
        discard();
    else if (code == WXK_DOWN || code == WXK_UP)
        scroll(code == WXK_DOWN ? 1 : -1);
    else
        return code == WXK_SPACE || code == WXK_ESCAPE; // not meant for what lies behind
    Refresh(false);
    return true;
}

void RehearsalView::keep() {
    bool kept = false;
    const auto measured = still_spoken(session_, *rehearsal_);
    guarded([&] {
        // First the times: a recording whose length isn't the talk's is not used, so nothing is ever mixed
        // up.
        store_measured(session_, measured);
        takes_->keep(measured);
        kept = true;
    });
    if (kept) discard(); // else it can be tried again
}

void RehearsalView::discard() {
    abandon();
    wishes_.done();
}

void RehearsalView::wheel(wxMouseEvent& event) {
    wheel_ += static_cast<double>(event.GetWheelRotation()) / event.GetWheelDelta();
    const int notches = static_cast<int>(wheel_);
    wheel_ -= notches;
    scroll(-notches);
}

void RehearsalView::scroll(int lines) {
    if (!rehearsal_) return;
    const int most = ended() ? summary_hidden(summary_area(), *rehearsal_) : page_.hidden();
    scrolled_ = std::clamp(scrolled_ + lines, ended() ? 0 : -most, most);
    Refresh(false);
}

wxRect RehearsalView::summary_area() const {
    const wxSize size = GetClientSize();
    const int side = size.x / 10, below = keep_->GetSize().y + FromDIP(60);
    return {side, side / 3, size.x - 2 * side, size.y - side / 3 - below};
}

void RehearsalView::paint(wxPaintEvent&) {
    wxAutoBufferedPaintDC dc(this);
    dc.SetBackground(wxBrush(to_wx(system_colours().paper)));
    dc.Clear();
    painted_ = now();
    if (!rehearsal_) return;
    if (ended())
        draw_summary(dc, summary_area(), GetFont(), *rehearsal_, takes_->count(rehearsal_->measured()),
                     scrolled_);
    else
        page_.draw(dc, GetClientSize(), GetFont(), *rehearsal_, now(), scrolled_, recording_shown());
}

} // namespace luft::desk
