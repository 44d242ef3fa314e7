#include "install/manual.h"

#include "cli/help.h"
#include "cli/interrupt.h"
#include "cli/program.h"
#include "files/version.h"

#include <CLI/CLI.hpp>

#include <sstream>

namespace luft::install {
namespace {

/// A line of words as roff takes it: nothing in it is a request, and hyphens can be copied as typed.
std::string roff(const std::string& words) {
    std::string safe = words.starts_with('.') || words.starts_with('\'') ? "\\&" : "";
    for (const char c : words)
        safe += c == '\\' ? "\\e" : c == '-' ? "\\-" : std::string(1, c);
    return safe;
}

/// Several lines, as they stand.
std::string as_typed(const std::string& lines) {
    std::istringstream in(lines);
    std::string out = ".PP\n.nf\n", line;
    while (std::getline(in, line))
        out += roff(line) + "\n";
    return out + ".fi\n";
}

/// "Usage: luftpause mark PROJECT keep ID... [OPTIONS]" without what stands before the program.
std::string usage(const CLI::App& app) {
    std::string line = cli::HelpFormatter().make_usage(&app, "");
    while (line.ends_with('\n'))
        line.pop_back();
    return line.substr(std::string("Usage: ").size());
}

/// A verb or an action: how it is called, what it does and takes, an example, then its actions.
std::string section(const CLI::App& app) {
    const CLI::Formatter formatter;
    std::string text = ".SS " + roff(usage(app)) + "\n" + roff(app.get_description()) + ".\n";
    for (const CLI::Option* option : app.get_options()) {
        if (option->check_name("--help")) continue; // every verb has it
        const bool named = !option->get_positional();
        const std::string opts = formatter.make_option_opts(option);
        text += ".TP\n\\fB" + roff(formatter.make_option_name(option, !named)) + "\\fR" +
                roff(named ? opts : "") + "\n" + roff(formatter.make_option_desc(option)) + "\n";
    }
    text += as_typed(app.get_footer());
    for (const CLI::App* action : app.get_subcommands([](const CLI::App*) { return true; }))
        text += section(*action);
    return text;
}

} // namespace

std::string manual() {
    cli::Frame frame;
    const auto app = cli::program(frame);
    std::string text = ".TH LUFTPAUSE 1 \"\" \"Luftpause " + files::version() +
                       "\"\n.SH NAME\nluftpause \\- find the breaths in a recorded performance, and decide "
                       "where to stop and what to say there\n.SH SYNOPSIS\n.B " +
                       roff(usage(*app)) + "\n.SH DESCRIPTION\n" + roff(app->get_description()) +
                       "\nIt estimates from sound and diagnoses nothing.\n" + as_typed(app->get_footer()) +
                       ".SH OPTIONS\n.TP\n.B \\-\\-help\nHelp; with a verb, help on that verb.\n"
                       ".TP\n.B \\-\\-version\nThe version.\n.SH VERBS\n";
    for (const CLI::App* verb : app->get_subcommands([](const CLI::App*) { return true; }))
        text += section(*verb);
    return text + ".SH EXIT STATUS\n0 when done, 1 when it failed, 2 when it was called wrongly, " +
           std::to_string(cli::kStoppedStatus) +
           " when it was stopped.\n.SH FILES\n.I NAME.luft\nis a project: one file, whole between two edits. "
           "Nothing is written but it, a copy of an older one before it is brought up to date, and the files "
           "that you "
           "ask for; there is no configuration.\n"
           ".SH SEE ALSO\n.BR luftpause\\-desk (1),\n.I /usr/share/doc/luftpause/guide.md\n";
}

} // namespace luft::install
