// The page of two performances: line against line, what differs beside it, and how both sound.
#pragma once

#include "desk/commands.h"
#include "desk/difference_list.h"
#include "desk/pair_sheet.h"
#include "desk/pair_sound.h"
#include "desk/work/versions.h"

#include <wx/listbox.h>
#include <wx/wx.h>

#include <functional>
#include <string>

namespace luft::desk {

class VersionsView : public wxPanel {
  public:
    struct Wishes {
        std::function<void(Do)> run;
        std::function<void(Job::Match)> begin; ///< to be done in the background
        std::function<void(const std::function<void()>&)> guarded;
        std::function<void(const std::string&)> say; ///< what was done, in passing
        std::function<void()> changed;               ///< what can be done has changed
        std::function<void()> done;                  ///< the keys go back to this page
    };

    VersionsView(wxWindow* parent, Session& session, Playing& playing, Wishes wishes);

    /// Asks for a comparison if there is none or something has changed since; cheap otherwise.
    void bring_up_to_date();
    void take(std::shared_ptr<const Matched> matched);
    /// The work was stopped, or couldn't be done for that reason.
    void not_done(const Job::Match& work, const std::string& why);
    /// See Versions.
    [[nodiscard]] bool waits() const { return versions_.waits(); }
    [[nodiscard]] std::string lacking() const { return versions_.lacking(); }
    /// What a command does on this page; false when it is none of this page's.
    bool run(Do id);
    /// Up and Down; false for other keys.
    bool key(int code);
    [[nodiscard]] bool can(Do id) const;
    /// Null while there is none.
    [[nodiscard]] const Matched* result() const { return versions_.result(); }

    /// Lets go of the player; see PairSound::release.
    bool release() { return sound_.release(); }
    /// To be called often while the page is seen.
    void tick();
    [[nodiscard]] bool playing() const { return sound_.playing(); }
    [[nodiscard]] Seconds position() const;
    [[nodiscard]] Seconds duration() const;
    [[nodiscard]] bool shows_as_sung() const { return as_sung_->GetValue(); }
    [[nodiscard]] bool tells_first() const { return versions_.order() == DifferenceOrder::most_telling; }
    void renew();
    void SetFocus() override { sheet_->SetFocus(); }

  private:
    void make_head(wxSizer& column);
    wxWindow* make_side();
    void refresh();
    void refresh_names();
    void refresh_buttons();
    void show_selected(bool reveal);
    void show_as_sung();
    void select(std::optional<std::size_t> difference);
    void set_place(sheet::Which which, Seconds own);
    [[nodiscard]] sheet::Which heard_last() const { return sound_.which().value_or(versions_.looked_at()); }
    void play(std::deque<Turn> turns);
    void play_or_pause();
    void say_when_empty();
    void make_moment(sheet::Which in);

    Session& session_;
    Wishes wishes_;
    Versions versions_;
    PairSound sound_;
    bool stale_ = true;
    std::shared_ptr<const Matched> shown_;

    wxChoice* names_[2] = {};
    wxButton* swap_ = nullptr;
    wxCheckBox* as_sung_ = nullptr;
    wxStaticText* note_ = nullptr;
    PairSheet* sheet_ = nullptr;
    wxChoice* order_ = nullptr;
    DifferenceList* list_ = nullptr;
    wxButton *upper_ = nullptr, *lower_ = nullptr, *in_turn_ = nullptr, *both_ = nullptr;
    wxButton *moment_ = nullptr, *moment_other_ = nullptr;
    wxListBox* pins_ = nullptr;
    wxButton *pin_ = nullptr, *unpin_ = nullptr;
};

} // namespace luft::desk
