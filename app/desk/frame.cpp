#include "desk/frame.h"

#include "desk/icon.h"
#include "desk/text.h"
#include "desk/work/edits.h"
#include "desk/work/sung_words.h"

#include <wx/config.h>
#include <wx/display.h>
#include <wx/dnd.h>

namespace luft::desk {
namespace {

constexpr int kTick = 16; ///< ms: once a frame of the screen
const wxSize kFirstSize(1280, 800);
constexpr int kSideWidth = 300;

/// "a, b and c".
std::string listed(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i)
        text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return text;
}

class Drop : public wxFileDropTarget {
  public:
    explicit Drop(Frame& frame) : frame_(frame) {}
    bool OnDropFiles(wxCoord, wxCoord, const wxArrayString& files) override {
        if (files.empty()) return false;
        // After the drop is done: what follows may be a dialog.
        frame_.CallAfter([this, file = files[0]] { frame_.open_file(file); });
        return true;
    }

  private:
    Frame& frame_;
};

} // namespace

Frame::Frame()
    : wxFrame(nullptr, wxID_ANY, "Luftpause", wxDefaultPosition, wxDefaultSize),
      recent_(9, static_cast<int>(Do::first_recent)), timer_(this), job_timer_(this) {
    SetIcons(program_icons());
    recent_.Load(*wxConfigBase::Get());
    make_menus();
    make_parts();
    restore_layout();
    SetDropTarget(new Drop(*this));
    session_.watch([this](const Session::Change& change) { watch(change); });
    Bind(wxEVT_MENU, [this](wxCommandEvent& event) { run(static_cast<Do>(event.GetId())); });
    Bind(wxEVT_CHAR_HOOK, &Frame::key, this);
    // While a menu is open, Escape and the arrows are its own.
    Bind(wxEVT_MENU_OPEN, [this](wxMenuEvent& event) {
        event.Skip();
        menu_open_ = true;
    });
    Bind(wxEVT_MENU_CLOSE, [this](wxMenuEvent& event) {
        event.Skip();
        menu_open_ = false;
    });
    Bind(wxEVT_CLOSE_WINDOW, [this](wxCloseEvent& event) {
        if (event.CanVeto() && !(may_leave() && may_stop_work())) return event.Veto();
        rehearsal_->abandon();
        save_layout();
        event.Skip();
    });
    Bind(wxEVT_SYS_COLOUR_CHANGED, [this](wxSysColourChangedEvent& event) {
        event.Skip();
        sheet_->renew();
        versions_->renew();
    });
    Bind(
        wxEVT_TIMER, [this](wxTimerEvent&) { tick(); }, timer_.GetId());
    Bind(
        wxEVT_TIMER, [this](wxTimerEvent&) { look_at_job(); }, job_timer_.GetId());
    timer_.Start(kTick);
    watch({true, true, true, true});
}

Frame::~Frame() {
    job_.reset();
    playing_.close();
}

void Frame::make_parts() {
    auto* column = new wxBoxSizer(wxVERTICAL);
    notice_ = new wxInfoBar(this);
    notice_->SetShowHideEffects(wxSHOW_EFFECT_NONE, wxSHOW_EFFECT_NONE);
    notice_->Bind(wxEVT_BUTTON, [this](wxCommandEvent& event) {
        if (event.GetId() == wxID_FIND) return find_recording();
        if (event.GetId() == wxID_FORWARD) return show_ready();
        event.Skip();
        CallAfter([this] { focus_page(); });
    });
    column->Add(notice_, 0, wxEXPAND);

    head_ = new wxPanel(this);
    auto* head = new wxBoxSizer(wxHORIZONTAL);
    piece_ = new wxStaticText(head_, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
    wxFont large = piece_->GetFont();
    large.SetFractionalPointSize(large.GetFractionalPointSize() * 1.25);
    piece_->SetFont(large.Bold());
    head->Add(piece_, 1, wxALIGN_CENTRE_VERTICAL | wxALL, FromDIP(8));
    performance_ = new wxChoice(head_, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(260, -1)));
    performance_->SetToolTip("The performance that is shown");
    performance_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        if (!may_leave()) return update_performances();
        guarded(
            [&] { session_.show(session_.performances().at(static_cast<std::size_t>(event.GetInt())).id); });
        focus_page();
    });
    head->Add(performance_, 0, wxALIGN_CENTRE_VERTICAL | wxALL, FromDIP(6));
    const auto view_button = [&](Do view, const wxString& words) {
        auto* button = new wxToggleButton(head_, wxID_ANY, words);
        button->SetToolTip(wxString(command(view).help) + "  (" + command(view).key + ")");
        button->Bind(wxEVT_TOGGLEBUTTON, [this, view](wxCommandEvent&) { run(view); });
        head->Add(button, 0, wxALIGN_CENTRE_VERTICAL | wxALL, FromDIP(3));
        return button;
    };
    sheet_button_ = view_button(Do::view_sheet, "Sheet");
    pages_button_ = view_button(Do::view_pages, "Pages");
    profile_button_ = view_button(Do::view_profile, "Profile");
    script_button_ = view_button(Do::view_script, "Script");
    versions_button_ = view_button(Do::view_versions, "Versions");
    head->AddSpacer(FromDIP(5));
    head_->SetSizer(head);
    head_->SetMinSize({-1, head_->GetBestSize().y}); // with and without the choice
    column->Add(head_, 0, wxEXPAND);

    job_bar_ = new wxPanel(this);
    auto* job = new wxBoxSizer(wxHORIZONTAL);
    job_text_ =
        new wxStaticText(job_bar_, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
    job_gauge_ = new wxGauge(job_bar_, wxID_ANY, 1000, wxDefaultPosition, FromDIP(wxSize(220, 12)));
    auto* stop = new wxButton(job_bar_, wxID_ANY, "Stop");
    stop->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
        stop_job();
        focus_page();
    });
    job->Add(job_text_, 1, wxALIGN_CENTRE_VERTICAL | wxALL, FromDIP(8));
    job->Add(job_gauge_, 0, wxALIGN_CENTRE_VERTICAL | wxALL, FromDIP(6));
    job->Add(stop, 0, wxALIGN_CENTRE_VERTICAL | wxALL, FromDIP(6));
    job_bar_->SetSizer(job);
    job_bar_->Hide();
    column->Add(job_bar_, 0, wxEXPAND);

    split_ = new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                  wxSP_LIVE_UPDATE | wxSP_THIN_SASH);
    split_->SetMinimumPaneSize(FromDIP(220));
    split_->SetSashGravity(1);
    book_ = new wxSimplebook(split_, wxID_ANY);
    start_ = new StartPage(book_, [this](Do id) { run(id); });
    sheet_ = new SheetView(
        book_, session_,
        {[this](Seconds t) { go_to(t, false); },
         [this](Span span) { guarded([&] { luft::desk::make_moment(session_, span); }); },
         [this](project::MarkId id, Span span) { guarded([&] { move_mark(session_, id, span); }); },
         [this](project::MomentId id, Span span) { guarded([&] { move_moment(session_, id, span); }); },
         [this](project::SungWordId id, Seconds at) { guarded([&] { move_word(session_, id, at); }); },
         [this] { run(Do::write_remark); }});
    profile_ = new ProfileView(book_, session_, [this](Span span) {
        if (playing_.loop()) play(Do::loop); // it would run back to where the loop is
        play_span(span);
    });
    book_->AddPage(start_, "");
    book_->AddPage(sheet_, "");
    book_->AddPage(profile_, "");
    pages_ = new PageView(book_, session_, [this](Seconds time) {
        go_to(time);
        show_page(Do::view_sheet);
        sheet_->reveal(time);
    });
    book_->AddPage(pages_, "");
    script_ = new ScriptView(book_, session_,
                             {[this](Do id) { run(id); },
                              [this](const std::function<void()>& what) { guarded(what); },
                              [this](const std::string& words) { transport_->show_note(shown(words)); },
                              [this](Span span) { play_span(span); }, [this] { focus_page(); }});
    book_->AddPage(script_, "");
    make_rehearsal();
    make_versions();
    right_ = new wxSplitterWindow(split_, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                  wxSP_LIVE_UPDATE | wxSP_THIN_SASH);
    right_->SetMinimumPaneSize(FromDIP(100));
    picture_ = new PictureView(right_);
    side_ = new SidePanel(
        right_, session_,
        [this](Do id) {
            run(id);
            focus_page();
        },
        [this](const std::function<void()>& what) { guarded(what); });
    side_->form().when_done([this] { focus_page(); });
    right_->SplitHorizontally(picture_, side_, FromDIP(kSideWidth * 9 / 16));
    split_->SplitVertically(book_, right_, -FromDIP(kSideWidth));
    column->Add(split_, 1, wxEXPAND);

    transport_ = new Transport(this, {[this](Do id) {
                                          run(id);
                                          focus_page();
                                      },
                                      [this](int percent) {
                                          set_speed(percent);
                                          focus_page();
                                      },
                                      [this](double share) { playing_.set_volume(share); }});
    column->Add(transport_, 0, wxEXPAND);
    SetSizer(column);
    SetMinClientSize(FromDIP(wxSize(760, 480)));
}

void Frame::restore_layout() {
    auto& config = *wxConfigBase::Get();
    const wxRect screen = wxDisplay(static_cast<unsigned>(0)).GetClientArea();
    const auto number = [&](const char* key, int otherwise) {
        return static_cast<int>(config.ReadLong(key, otherwise));
    };
    wxSize size(number("/window/width", FromDIP(kFirstSize).x),
                number("/window/height", FromDIP(kFirstSize).y));
    size.DecTo(screen.GetSize());
    SetSize(size);
    const wxPoint at(number("/window/x", -1), number("/window/y", -1));
    if (at.x >= 0 && at.y >= 0 && screen.Contains(at))
        Move(at);
    else
        Centre();
    if (config.ReadBool("/window/maximized", false)) Maximize();
    playing_.set_volume(config.ReadDouble("/sound/volume", 0.8));
    transport_->set_volume(playing_.volume());
    split_->SetSashPosition(-number("/window/side", FromDIP(kSideWidth)));
    right_->SetSashPosition(number("/window/picture", FromDIP(kSideWidth * 9 / 16)));
}

void Frame::save_layout() {
    auto& config = *wxConfigBase::Get();
    config.Write("/window/maximized", IsMaximized());
    if (!IsMaximized() && !IsIconized()) {
        config.Write("/window/width", GetSize().x);
        config.Write("/window/height", GetSize().y);
        config.Write("/window/x", GetPosition().x);
        config.Write("/window/y", GetPosition().y);
    }
    config.Write("/window/side",
                 split_->IsSplit() ? split_->GetClientSize().x - split_->GetSashPosition() : side_width_);
    if (right_->IsSplit()) config.Write("/window/picture", right_->GetSashPosition());
    config.Write("/sound/volume", playing_.volume());
    recent_.Save(config);
    config.Flush();
}

void Frame::watch(const Session::Change& change) {
    if (change.project || change.shown) {
        open_media();
        notice_->Dismiss();
        if (!session_.damage().empty())
            say("This project is damaged: " + listed(session_.damage()) +
                    " can't be read. The rest is shown, to read only. Keep this file, and go on with a copy "
                    "from before.",
                wxICON_WARNING);
        else if (session_.is_open() && session_.read_only())
            say("This project can only be read here, so nothing can be changed. Copy it to a folder of your "
                "own to work on it.");
        if (media_missing_) offer_to_find_recording();
    }
    if (change.project) {
        const bool open = session_.is_open();
        show_around(open);
        show_side(open);
        open ? show_page(Do::view_sheet) : static_cast<void>(book_->SetSelection(0));
        if (!open) {
            std::vector<wxString> files;
            for (std::size_t i = 0; i < recent_.GetCount(); ++i)
                files.push_back(recent_.GetHistoryFile(i));
            start_->show_recent(files);
        }
        Layout();
    }
    if (change.project || change.shown || change.contents) {
        update_performances();
        update_facets();
        update_title();
        side_->show_open(open_proposals(session_.source(), order_, review_notes_).size());
        // While the player is lent to the page of two, another performance sounds.
        if (playing_.tone() != ToneKind::off && !on_page(versions_))
            playing_.set_tone(playing_.tone(), session_);
    }
    say_when_empty();
    update_menus();
}

void Frame::say_when_empty() {
    sheet_->say_when_empty(job_ ? "The sheet appears here as soon as the recording has been listened to."
                                : "There is no performance in this project yet.\n"
                                  "File, Add a performance brings one in; or drop a recording here.");
}

void Frame::update_title() {
    const auto& piece = session_.source().piece;
    if (!session_.is_open()) return SetTitle("Luftpause");
    const wxString title = piece.title.empty() ? wxString("Untitled") : shown(piece.title);
    piece_->SetLabelText(title);
    SetTitle(title + shown(" – Luftpause"));
}

void Frame::update_performances() {
    performance_->Clear();
    for (const auto& one : session_.performances()) {
        performance_->Append(shown(one.label + (one.performer.empty() ? "" : ":  " + one.performer)));
        if (session_.shown() == one.id)
            performance_->SetSelection(static_cast<int>(performance_->GetCount()) - 1);
    }
    performance_->Show(!on_page(versions_) && session_.performances().size() > 1);
    head_->Layout();
}

void Frame::show_page(Do view) {
    if (!session_.is_open()) return;
    wxWindow* const page = view == Do::view_pages      ? static_cast<wxWindow*>(pages_)
                           : view == Do::view_profile  ? static_cast<wxWindow*>(profile_)
                           : view == Do::view_script   ? static_cast<wxWindow*>(script_)
                           : view == Do::view_versions ? static_cast<wxWindow*>(versions_)
                                                       : static_cast<wxWindow*>(sheet_);
    script_->store();
    show_around(true);
    show_side(page != script_ && page != versions_);
    if (page == versions_ && !on_page(versions_)) begin_versions();
    if (page != versions_ && on_page(versions_)) leave_versions();
    performance_->Show(page != versions_ && session_.performances().size() > 1); // it has two of its own
    head_->Layout();
    book_->SetSelection(static_cast<std::size_t>(book_->FindPage(page)));
    GetMenuBar()->Check(static_cast<int>(view), true);
    sheet_button_->SetValue(view == Do::view_sheet);
    pages_button_->SetValue(view == Do::view_pages);
    profile_button_->SetValue(view == Do::view_profile);
    if (view == Do::view_profile) profile_->bring_up_to_date();
    if (view == Do::view_pages) pages_->bring_up_to_date();
    script_button_->SetValue(view == Do::view_script);
    if (view == Do::view_script) script_->bring_up_to_date();
    versions_button_->SetValue(view == Do::view_versions);
    if (view == Do::view_versions) versions_->bring_up_to_date();
    update_menus();
    focus_page();
}

void Frame::show_side(bool wanted) {
    if (wanted == split_->IsSplit()) return;
    if (wanted) {
        const int width = side_width_ > 0 ? side_width_ : FromDIP(kSideWidth);
        split_->SplitVertically(book_, right_, -width);
    } else {
        side_width_ = split_->GetClientSize().x - split_->GetSashPosition();
        split_->Unsplit(right_);
    }
}

} // namespace luft::desk
