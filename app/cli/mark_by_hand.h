// A mark as the coach sets it, with what the curves say about its place.
#pragma once

#include "project/project.h"

#include <optional>

namespace luft::cli {

/// The span out of `--at`, `--from` and `--to`: a switch is a point in time; a breath `at` a time has the
/// usual length. Throws UsageError when they don't make a span.
Span span_by_hand(project::MarkKind kind, std::optional<Seconds> at, std::optional<Seconds> from,
                  std::optional<Seconds> to);

/// A note takes pitch and level from the stored curves. Throws Error(bad_request) for a note where no pitch
/// was heard.
project::Mark mark_by_hand(const project::Project& project, const project::Performance& performance,
                           project::MarkKind kind, Span span);

} // namespace luft::cli
