#include "cli/help.h"

namespace luft::cli {
namespace {

/// "luftpause mark PROJECT keep ID..."
std::string path_of(const CLI::App* app) {
    std::string path = app->get_parent() == nullptr ? "" : path_of(app->get_parent()) + " ";
    path += app->get_name();
    for (const CLI::Option* option :
         app->get_options([](const CLI::Option* o) { return o->get_positional(); }))
        path += " " + option->get_name(true) + (option->get_items_expected_max() > 1 ? "..." : "");
    return path;
}

} // namespace

std::string HelpFormatter::make_usage(const CLI::App* app, std::string) const {
    std::string usage = "Usage: " + path_of(app);
    if (!app->get_subcommands([](const CLI::App*) { return true; }).empty())
        usage += app->get_parent() == nullptr ? " VERB" : " ACTION";
    return usage + " [OPTIONS]\n";
}

} // namespace luft::cli
