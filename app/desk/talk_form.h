// What is selected in the script, to be changed: its words, where it halts, what is heard before and after.
#pragma once

#include "desk/work/session.h"
#include "desk/work/talk_choices.h"

#include <wx/timer.h>
#include <wx/wx.h>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace luft::desk {

class TalkForm : public wxScrolledWindow {
  public:
    struct Wishes {
        std::function<void(const std::function<void()>&)> guarded;
        std::function<void()> mend;           ///< the selected part's first warning
        std::function<void(bool later)> halt; ///< at the next phrase end, or the one before
        std::function<void()> play;           ///< the music up to it
        std::function<void()> remove;
        std::function<void()> done; ///< the keys go back to the list
    };
    /// What the form shows beside the item itself.
    struct Around {
        std::string title;
        std::string when;                  ///< "at 1:02.3 of the programme"
        std::vector<std::string> warnings; ///< of this part
        std::optional<std::string> remedy; ///< what the button would do against the first one
    };

    TalkForm(wxWindow* parent, Session& session, Wishes wishes);

    /// `source` must outlive what is shown. Words that are only in the field must have been stored.
    void show(const script::Source& source, const project::ScriptItem& item, const Around& around);
    void show_nothing(const wxString& words);
    /// Stores words that are still only in the field. What is shown changes with it.
    void store();
    /// The project that it shows is gone.
    void forget() { item_.reset(); }
    void begin_words();

  private:
    void make_words();
    void make_places();
    void fill_places(const project::ScriptItem& item);
    void change(const std::function<void(project::ScriptItem&)>& how);
    void count();
    void typed_halt();
    /// What isn't a time is said.
    [[nodiscard]] std::optional<Seconds> read_time(const wxString& text);
    void choose_quote(std::size_t choice);
    [[nodiscard]] std::optional<Seconds> ask_place(const wxString& what, Seconds now);

    Session& session_;
    Wishes wishes_;
    const script::Source* source_ = nullptr;
    std::optional<project::ScriptItem> item_; ///< as stored
    bool filling_ = false;
    wxTimer pause_;
    std::vector<PlaceChoice> lead_ins_, resumes_;
    std::vector<SpanChoice> replays_;
    std::vector<QuoteChoice> quotes_;

    wxStaticText* title_;
    wxStaticText* when_;
    wxStaticText* warning_;
    wxButton* mend_;
    wxPanel* fields_;
    wxTextCtrl* words_ = nullptr;
    wxStaticText* count_ = nullptr;
    wxButton* reword_ = nullptr;
    wxButton* estimate_ = nullptr;
    wxFlexGridSizer* grid_ = nullptr;
    wxTextCtrl* halt_ = nullptr;
    wxButton* earlier_ = nullptr;
    wxButton* later_ = nullptr;
    wxChoice* kind_ = nullptr;
    wxChoice* lead_in_ = nullptr;
    wxChoice* resume_ = nullptr;
    wxChoice* quote_ = nullptr;
    wxChoice* replay_ = nullptr;
    wxChoice* speed_ = nullptr;
    std::vector<wxWindow*> stop_only_, placed_only_;
    std::vector<wxWindow*> quote_only_; ///< of a stop, where there is another performance
};

} // namespace luft::desk
