// What a person types: times, texts, and what is wrong with them.
#pragma once

#include "base/units.h"

#include <stdexcept>
#include <string>

namespace luft::cli {

/// Wrong use of the command line: one sentence without a full stop. The program ends with status 2.
class UsageError : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// Reads "12.5", "1:02.5" or "1:01:02.5". Throws UsageError for anything else and below 0.
Seconds parse_time(const std::string& text);

/// A whole text file without the line ends at its end. Throws Error(not_found, unreadable), also for text
/// that isn't UTF-8.
std::string read_text_file(const std::string& file);

} // namespace luft::cli
