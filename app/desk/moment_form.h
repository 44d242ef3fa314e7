// The selected moment, to be written: verdict, shades, remark and drill.
#pragma once

#include "desk/work/session.h"
#include "desk/work/shades.h"

#include <wx/listbox.h>
#include <wx/timer.h>
#include <wx/wx.h>

#include <functional>
#include <vector>

namespace luft::desk {

/// Everything that is set here is an edit of its own at once; a remark is stored when its writing pauses or
/// is left.
class MomentForm : public wxPanel {
  public:
    /// `guarded` runs an edit and shows what goes wrong.
    MomentForm(wxWindow* parent, Session& session, std::function<void(const std::function<void()>&)> guarded);

    /// Shows a moment; what was being written is stored first.
    void show(const project::Moment& moment);
    void begin_shade();
    /// Offers the shades of one facet, each with a digit that takes it.
    void begin_shade_of(const std::string& facet);
    void begin_remark();
    /// Forgets what was typed to find a shade.
    void leave_shade();
    /// Hides the form; what was being written has been stored, or its moment is gone.
    void close();
    /// Called when a shade has been taken, or the form closes while it has
    /// the keys, so that they can go back to the sheet.
    void when_done(std::function<void()> done) { done_ = std::move(done); }
    /// Stores what is being written.
    void store();

  private:
    void change(const std::function<void(project::Moment&)>& how);
    void offer();
    void take_offer(std::size_t index);
    void show_shades(const project::Moment& moment);
    void show_drills(const project::Moment& moment);
    void show_beside(const project::Moment& moment);
    void show_offers(bool any, bool none);

    Session& session_;
    std::function<void(const std::function<void()>&)> guarded_;
    std::function<void()> done_;
    std::optional<project::MomentId> moment_;
    wxRadioBox* verdict_;
    wxBoxSizer* shades_;
    wxTextCtrl* shade_;
    wxListBox* offers_;
    wxStaticText* no_offer_;
    wxTextCtrl* remark_;
    wxChoice* drill_;
    wxPanel* beside_; ///< hidden where nothing is heard beside the moment
    wxStaticText* beside_words_;
    std::vector<ShadeOffer> offered_;
    std::string facet_; ///< whose shades are offered; empty for all
    std::vector<vocabulary::Tag> recent_;
    std::vector<std::string> drills_;
    std::string shown_remark_;
    std::vector<vocabulary::Tag> shown_shades_;
    wxTimer pause_;
    bool filling_ = false;
};

} // namespace luft::desk
