// The words for marks that our files and tables use; the same everywhere, and those of the tag vocabulary.
#pragma once

#include "project/model.h"

#include <string_view>

namespace luft::exports {

std::string_view word(marks::Register which);
std::string_view word(marks::OnsetKind kind);
std::string_view word(marks::OffsetKind kind);
std::string_view word(marks::BreathEvidence evidence);
std::string_view word(marks::LevelShape shape);
std::string_view word(marks::Dynamic mark);
std::string_view word(voice::Setting setting);
std::string_view word(project::MarkKind kind); ///< "note", "breath", "phrase", "switch"
std::string_view word(project::MarkState state);
std::string_view word(project::Origin origin);

} // namespace luft::exports
