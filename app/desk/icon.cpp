#include "desk/icon.h"

#include "desk/bitmap.h"
#include "files/sign.h"

namespace luft::desk {
namespace {

wxIcon icon(int side) {
    sheet::Canvas canvas = sheet::Canvas::picture(side, side);
    files::draw_sign(canvas, side);
    wxIcon made;
    made.CopyFromBitmap(bitmap_of(canvas));
    return made;
}

} // namespace

const wxIconBundle& program_icons() {
    static const wxIconBundle icons = [] {
        wxIconBundle made;
        for (const int side : {16, 24, 32, 48, 64, 128})
            made.AddIcon(icon(side));
        return made;
    }();
    return icons;
}

} // namespace luft::desk
