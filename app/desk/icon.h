// The program's sign (files/sign.h) for the window.
#pragma once

#include <wx/iconbndl.h>

namespace luft::desk {

/// In the sizes that title bars, task bars and the About box ask for. Drawn once.
const wxIconBundle& program_icons();

} // namespace luft::desk
