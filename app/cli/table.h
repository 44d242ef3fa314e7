// Tables and paragraphs for a terminal.
#pragma once

#include "export/text_table.h"

namespace luft::cli {

using exports::Align;
using exports::one_line;
using exports::paragraph;
using exports::Table;

} // namespace luft::cli
