// All keys on one page, made from the table of commands.
#pragma once

#include <wx/wx.h>

namespace luft::desk {

void show_key_chart(wxWindow* parent);

} // namespace luft::desk
