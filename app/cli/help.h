// How help looks.
#pragma once

#include <CLI/CLI.hpp>

namespace luft::cli {

/// CLI11's help with a usage line that says where everything stands: the project comes before an action.
class HelpFormatter : public CLI::Formatter {
  public:
    [[nodiscard]] std::string make_usage(const CLI::App* app, std::string name) const override;
};

} // namespace luft::cli
