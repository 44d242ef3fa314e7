// The program's sign: the written breath mark over a rule of the sheet.
#pragma once

#include <wx/iconbndl.h>

namespace luft::desk {

/// In the sizes that title bars, task bars and the About box ask for. Drawn once.
const wxIconBundle& program_icons();

} // namespace luft::desk
