// Marks in a few words.
#pragma once

#include "project/model.h"

#include <string>

namespace luft::cli {

/// What it is: "A4 +12 cents, breathy onset, head", "heard", "chest to head".
std::string mark_text(const project::Mark& mark);

/// "breath 12 at 0:12.3", for messages.
std::string mark_name(const project::Mark& mark);

} // namespace luft::cli
