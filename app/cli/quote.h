// Spans of another performance: as they are typed, and as they are shown.
#pragma once

#include "cli/json_text.h"
#include "cli/options.h"
#include "project/project.h"

#include <map>
#include <optional>
#include <string>

namespace luft::cli {

/// "LABEL@START-END", as "live@0:41-0:44.5"; a label may hold an '@' itself.
struct TypedQuote {
    std::string label;
    Span span;
};

void quote_option(Verb& verb, const std::string& name, std::optional<TypedQuote>& into,
                  const std::string& help);

/// Throws Error(not_found) when there is no such performance, Error(bad_request) when its recording ends
/// before.
project::Quote found(const project::Project& project, const TypedQuote& typed);

using Labels = std::map<project::PerformanceId, std::string>;
Labels labels_of(const project::Project& project);

/// "live 0:41.0-0:44.5".
std::string quote_text(const project::Quote& quote, const Labels& labels);

/// Keys: performance (its label), start_s, end_s; null for none.
Json quote_value(const std::optional<project::Quote>& quote, const Labels& labels);

} // namespace luft::cli
