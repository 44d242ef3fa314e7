// How a rehearsal looks: the words, what comes, and how the time goes.
#pragma once

#include "desk/prompt.h"
#include "desk/work/rehearsal.h"
#include "sheet/colours.h"

#include <wx/dc.h>
#include <wx/string.h>

namespace luft::desk {

/// What the page shows besides the rehearsal itself.
struct RecordingShown {
    bool on = false;               ///< talks are to be recorded
    bool now = false;              ///< this one is
    std::optional<Decibels> level; ///< of what comes in
    std::string note;              ///< why something isn't heard or recorded; empty when all is well
};

class RehearsalPage {
  public:
    /// Draws it all. `font` is the window's; `lines`: scrolled on by hand.
    void draw(wxDC& dc, wxSize size, const wxFont& font, const Rehearsal& rehearsal, Seconds now, int lines,
              const RecordingShown& recording);
    /// How far the words that were drawn last can be scrolled, in lines.
    [[nodiscard]] int hidden() const { return prompt_.hidden(); }
    [[nodiscard]] int letters() const { return prompt_.size(); }

    /// The measure of everything on a page of that height, in pixels: the height of small print.
    static int unit(int height);

  private:
    void draw_top(const Rehearsal& rehearsal);
    void draw_talk(const Rehearsal& rehearsal, Seconds now, int lines);
    void draw_music(const Rehearsal& rehearsal, Seconds now);
    void draw_wait(Seconds left, const Rehearsal& rehearsal);
    void draw_aside(const std::string& words, const wxString& above, bool due, Seconds left);
    void draw_strip(const Rehearsal& rehearsal, Seconds now, const RecordingShown& recording);
    void draw_bar(const wxRect& place, Seconds elapsed, Seconds planned);
    void draw_recording(const wxRect& place, const RecordingShown& recording);
    void set(int size, sheet::Colour colour, bool bold = false);

    Prompt prompt_;
    // for the time of `draw`
    wxDC* dc_ = nullptr;
    wxFont font_;
    sheet::Colours colours_;
    wxRect words_; ///< where they stand
    wxRect strip_; ///< under them
    wxRect top_;   ///< over them
    int unit_ = 16;
    int height_ = 0;
};

} // namespace luft::desk
