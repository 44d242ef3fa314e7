// The marks of a performance as a table for other programs, RFC 4180.
#pragma once

#include "project/model.h"

#include <string>
#include <vector>

namespace luft::exports {

/// A header record and one record a mark, in the order given; records end with CR LF, fields are quoted where
/// RFC 4180 (rules 5 to 7) wants it. A column that doesn't apply to a kind of mark is empty. UTF-8.
std::string marks_csv(const project::Performance& performance, const std::vector<project::Mark>& marks);

} // namespace luft::exports
