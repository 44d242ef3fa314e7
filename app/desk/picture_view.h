// The video's picture at the playhead.
#pragma once

#include "media/media.h"

#include <wx/wx.h>

#include <memory>
#include <string>

namespace luft::desk {

class PictureView : public wxPanel {
  public:
    explicit PictureView(wxWindow* parent);

    /// Shows another video; nothing for none, with a line that says why.
    void open(std::unique_ptr<media::PictureSource> pictures, const wxString& otherwise);
    /// The picture that is on the screen at that time.
    void show_at(Seconds time);
    [[nodiscard]] bool has_pictures() const { return pictures_ != nullptr; }
    /// Saves the picture that is shown as PNG or JPEG, in the video's own size. Throws Error.
    void save(const std::string& file);
    [[nodiscard]] Seconds shown_time() const { return picture_.time; }

  private:
    void paint(wxPaintEvent&);
    void decode(Seconds time);

    std::unique_ptr<media::PictureSource> pictures_;
    wxString otherwise_;
    media::Picture picture_;
    wxBitmap bitmap_;
    Seconds asked_{-1};
};

} // namespace luft::desk
