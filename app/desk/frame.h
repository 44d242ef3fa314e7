// The window: menus, the parts and how they hang together.
#pragma once

#include "desk/commands.h"
#include "desk/page_view.h"
#include "desk/picture_view.h"
#include "desk/playing.h"
#include "desk/profile_view.h"
#include "desk/rehearsal_view.h"
#include "desk/script_view.h"
#include "desk/sheet_view.h"
#include "desk/side_panel.h"
#include "desk/start_page.h"
#include "desk/transport.h"
#include "desk/versions_view.h"
#include "desk/work/job.h"
#include "desk/work/review.h"
#include "desk/work/session.h"

#include <wx/filehistory.h>
#include <wx/infobar.h>
#include <wx/simplebook.h>
#include <wx/splitter.h>
#include <wx/tglbtn.h>
#include <wx/timer.h>
#include <wx/wx.h>

#include <deque>
#include <memory>

namespace luft::desk {

class Frame : public wxFrame {
  public:
    Frame();
    ~Frame() override;
    Frame(const Frame&) = delete;
    Frame& operator=(const Frame&) = delete;

    /// Opens a project or begins with a recording, whichever it is.
    void open_file(const wxString& file);
    /// Paints the sheet many times and prints the times, for the benchmark; then closes.
    void measure(int frames);

  private:
    // frame.cpp: construction
    void make_parts();
    void restore_layout();
    void save_layout();
    void watch(const Session::Change& change);
    void update_performances();
    void update_title();
    /// Before another performance or project is shown: stores what is only in a field, and asks for the times
    /// of a rehearsal. False when the answer is to stay.
    bool may_leave();
    void show_page(Do view);
    /// The picture and the panel at the right; pages that need the width do without.
    void show_side(bool wanted);
    [[nodiscard]] bool on_page(const wxWindow* page) const { return book_->GetCurrentPage() == page; }
    void say_when_empty();

    // frame_menus.cpp
    void make_menus();
    void update_menus();
    void update_facets();

    // frame_commands.cpp: what a command does
    void run(Do id);
    bool run_edit(Do id);
    bool run_view(Do id);
    void key(wxKeyEvent& event);
    /// Runs it; what goes wrong is said in the window's line.
    void guarded(const std::function<void()>& what);
    void say(const std::string& words, int icon = wxICON_INFORMATION);
    void say(const Error& error);
    /// Keys go to the sheet, or to the profile when that is shown.
    void focus_page();
    /// Why a command can't be had now, for a person; nothing when there is nothing to say.
    [[nodiscard]] std::string why_not(Do id) const;

    // frame_review.cpp
    void review_next();
    void keep_or_drop(project::MarkState state);
    void select_and_reveal(const Selection& selection);

    // frame_files.cpp: projects, recordings, background listening
    /// What would be lost if the work in the background stopped now, as the beginning of a sentence; empty
    /// when nothing would.
    [[nodiscard]] std::string unfinished() const;
    /// Asks, when something would be.
    bool may_stop_work();
    /// may_leave, and nothing is being done in the background.
    bool may_open_another();
    void new_from_recording(const wxString& media);
    void add_performance(const wxString& media);
    void ask_and(bool new_project);
    void open_project(const wxString& file);
    void open_sample();
    void save_copy();
    void close_project();
    void begin(Job::Task task);
    void look_at_job();
    void stop_job();
    void leave_waiting(); ///< what hasn't begun yet
    void tell_of(const intake::Added& added, bool shown_already);
    void show_ready();
    void remember(const wxString& file);
    void print_sheet();
    void write_files();
    void tell_of(const files::Written& written);
    void offer_to_find_recording();
    void find_recording();

    // frame_play.cpp: sound, playhead and picture
    void open_media();
    void show_sound_note();
    void show_no_loop();
    /// Heard at once, but on the page of two performances, where others sound, only afterwards.
    void choose_tone(ToneKind tone);
    void tick();
    /// `reveal` scrolls there; not after a click, or what was clicked would run away.
    void go_to(Seconds time, bool reveal = true);
    void play(Do id);
    void play_span(Span span);
    void set_speed(int percent);
    void step_picture(int frames);
    void save_still();
    [[nodiscard]] Span loop_span() const;

    // frame_rehearsal.cpp
    void make_rehearsal();
    /// Goes back to one that was left in the middle, else begins.
    void rehearse(bool from_selected);
    /// Asks what becomes of the times; false when the answer is to stay.
    bool may_leave_rehearsal();
    /// The rehearsal has the window to itself, but for the menus.
    void show_around(bool wanted);

    // frame_versions.cpp
    void make_versions();
    /// The player is lent to that page, and taken back.
    void begin_versions();
    void leave_versions();
    void tick_versions();
    /// What became of a comparison in the background.
    void take_comparison(const Job::Match& work, const Job::Outcome& outcome);
    /// Those that haven't begun yet.
    void leave_comparisons();
    void write_report();
    void update_version_menu();

    // frame_dialogs.cpp
    void edit_piece();
    void edit_vocabulary();
    void set_script_limits();
    void find_moment();
    void about();

    Session session_;
    Playing playing_;
    std::unique_ptr<Job> job_;
    std::deque<Job::Task> waiting_;               ///< listened to one after the other
    std::optional<project::PerformanceId> ready_; ///< listened to last
    ReviewOrder order_ = ReviewOrder::by_time;
    bool review_notes_ = false;

    wxFileHistory recent_;
    wxTimer timer_;
    wxTimer job_timer_;
    wxInfoBar* notice_ = nullptr;
    wxPanel* head_ = nullptr;
    wxStaticText* piece_ = nullptr;
    wxChoice* performance_ = nullptr;
    wxToggleButton* sheet_button_ = nullptr;
    wxToggleButton* pages_button_ = nullptr;
    wxToggleButton* profile_button_ = nullptr;
    wxPanel* job_bar_ = nullptr;
    wxStaticText* job_text_ = nullptr;
    wxGauge* job_gauge_ = nullptr;
    wxToggleButton* script_button_ = nullptr;
    wxSimplebook* book_ = nullptr;
    StartPage* start_ = nullptr;
    wxSplitterWindow* split_ = nullptr;
    wxSplitterWindow* right_ = nullptr;
    SheetView* sheet_ = nullptr;
    ProfileView* profile_ = nullptr;
    PageView* pages_ = nullptr;
    ScriptView* script_ = nullptr;
    RehearsalView* rehearsal_ = nullptr;
    VersionsView* versions_ = nullptr;
    wxToggleButton* versions_button_ = nullptr;
    PictureView* picture_ = nullptr;
    SidePanel* side_ = nullptr;
    Transport* transport_ = nullptr;
    wxMenu* file_menu_ = nullptr;
    wxMenu* facet_menu_ = nullptr;
    Seconds before_versions_{0}; ///< where the performance that is shown goes on after that page
    bool media_missing_ = false;
    bool was_playing_ = false;
    bool menu_open_ = false;
    int side_width_ = 0;                ///< while the side isn't shown
    std::optional<Seconds> play_until_; ///< the end of what was asked for
};

} // namespace luft::desk
