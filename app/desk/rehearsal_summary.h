// What a rehearsal came to: every talk as planned and as measured.
#pragma once

#include "desk/work/rehearsal.h"

#include <wx/dc.h>

namespace luft::desk {

/// Draws it into the area, from the row `first` on. `takes`: how many recordings would be kept.
void draw_summary(wxDC& dc, const wxRect& area, const wxFont& font, const Rehearsal& rehearsal,
                  std::size_t takes, int first);

/// How many rows can't be seen at once.
int summary_hidden(const wxRect& area, const Rehearsal& rehearsal);

} // namespace luft::desk
