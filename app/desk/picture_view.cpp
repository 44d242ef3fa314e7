#include "desk/picture_view.h"

#include "base/error.h"
#include "desk/text.h"

#include <wx/dcbuffer.h>
#include <wx/filename.h>
#include <wx/image.h>

#include <algorithm>
#include <cstring>

namespace luft::desk {
namespace {

wxImage image_of(const media::Picture& picture) {
    wxImage image(picture.width, picture.height, false);
    std::memcpy(image.GetData(), picture.rgb.data(), picture.rgb.size());
    return image;
}

} // namespace

PictureView::PictureView(wxWindow* parent) : wxPanel(parent, wxID_ANY) {
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    SetMinSize(FromDIP(wxSize(160, 120)));
    Bind(wxEVT_PAINT, &PictureView::paint, this);
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        event.Skip();
        if (asked_ >= Seconds(0)) decode(asked_);
        Refresh();
    });
}

void PictureView::open(std::unique_ptr<media::PictureSource> pictures, const wxString& otherwise) {
    pictures_ = std::move(pictures);
    otherwise_ = otherwise;
    bitmap_ = wxBitmap();
    picture_ = {};
    asked_ = Seconds(-1);
    if (pictures_) show_at(Seconds(0));
    Refresh();
}

void PictureView::show_at(Seconds time) {
    if (!pictures_ || !IsShown() || time == asked_) return;
    decode(time);
    Refresh(false);
}

void PictureView::decode(Seconds time) {
    asked_ = time;
    if (!pictures_) return;
    try {
        const double scale = GetContentScaleFactor();
        const int width = std::max(16, static_cast<int>(GetClientSize().x * scale));
        media::Picture next = pictures_->at(time, width);
        if (bitmap_.IsOk() && next.time == picture_.time && next.width == picture_.width) return;
        picture_ = std::move(next);
        bitmap_ = wxBitmap(image_of(picture_), wxBITMAP_SCREEN_DEPTH, scale);
    } catch (const Error& error) {
        otherwise_ = shown(error.what());
        bitmap_ = wxBitmap();
    }
}

void PictureView::paint(wxPaintEvent&) {
    wxPaintDC dc(this);
    const wxSize size = GetClientSize();
    dc.SetPen(*wxTRANSPARENT_PEN);
    dc.SetBrush(wxBrush(wxColour(20, 20, 19)));
    dc.DrawRectangle(0, 0, size.x, size.y);
    if (!bitmap_.IsOk()) {
        dc.SetTextForeground(wxColour(190, 186, 176));
        dc.DrawLabel(otherwise_, wxRect(8, 8, size.x - 16, size.y - 16), wxALIGN_CENTRE);
        return;
    }
    const wxSize wide = bitmap_.GetLogicalSize().GetWidth() > 0 ? wxSize(bitmap_.GetLogicalSize()) : size;
    const double fit = std::min(static_cast<double>(size.x) / wide.x, static_cast<double>(size.y) / wide.y);
    const wxSize drawn(std::max(1, static_cast<int>(wide.x * fit)),
                       std::max(1, static_cast<int>(wide.y * fit)));
    const wxPoint at((size.x - drawn.x) / 2, (size.y - drawn.y) / 2);
    if (drawn == wide) return dc.DrawBitmap(bitmap_, at);
    dc.DrawBitmap(wxBitmap(bitmap_.ConvertToImage().Scale(drawn.x, drawn.y, wxIMAGE_QUALITY_BILINEAR)), at);
}

void PictureView::save(const std::string& file) {
    if (!pictures_) throw Error(Fault::bad_request, "This performance has no picture.");
    const media::Picture whole = pictures_->at(asked_);
    wxLogNull quiet; // we say it ourselves
    const wxString name = shown(file);
    const wxString ending = wxFileName(name).GetExt().Lower();
    const bool jpeg = ending == "jpg" || ending == "jpeg";
    wxImage image = image_of(whole);
    image.SetOption(wxIMAGE_OPTION_QUALITY, 92);
    if (!image.SaveFile(name, jpeg ? wxBITMAP_TYPE_JPEG : wxBITMAP_TYPE_PNG))
        throw Error(Fault::cannot_write, "The picture can't be written to '" + file + "'.",
                    "Choose another folder, or make room.");
}

} // namespace luft::desk
