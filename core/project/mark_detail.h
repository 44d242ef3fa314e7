// A mark's own values as JSON, in the column mark.detail. Keys and units stand in docs/project-file.md.
#pragma once

#include "project/detail_values.h"
#include "project/model.h"

#include <string>

namespace luft::project {

/// Everything of the mark but span, confidence and evidence, which are columns. Numbers are written so that
/// they read back to the same bits. Throws Error(bad_request) for a number that isn't finite.
std::string detail_text(const Mark& mark);

/// Reads the values back; one of them can read any number of marks.
class DetailReader {
  public:
    /// Puts kind and values together again. Throws Error(unreadable) for JSON that doesn't say a mark of that
    /// kind.
    void put(Mark& mark, MarkKind kind, Span span, Confidence confidence, const std::string& evidence,
             const std::string& detail);

  private:
    DetailValues values_;
};

} // namespace luft::project
