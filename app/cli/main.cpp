// `luftpause`: reads the command line, runs one verb, and says in one line what went wrong.
#include "cli/interrupt.h"
#include "cli/program.h"
#include "cli/table.h"

#include <CLI/CLI.hpp>

#include <cstdio>
#include <exception>
#include <string>

namespace {

constexpr int kFailed = 1;
constexpr int kWrongUse = 2;

/// One line on standard error, whatever the message holds.
int complain(const std::string& message, int status) {
    std::fprintf(stderr, "luftpause: %s\n", luft::cli::one_line(message).c_str());
    return status;
}

/// The verbs that were named, as they were typed: "mark add ".
std::string named(const CLI::App& app) {
    for (const CLI::App* verb : app.get_subcommands())
        return verb->get_name() + " " + named(*verb);
    return "";
}

int wrong_use(const CLI::App& app, const std::exception& error) {
    return complain(std::string(error.what()) + ". See 'luftpause " + named(app) + "--help'.", kWrongUse);
}

/// Reads the command line and does the work that it chose.
int run(CLI::App& app, luft::cli::Frame& frame, int argc, char** argv) {
    try {
        app.parse(argc, argv);
        frame.run();
        return 0;
    } catch (const CLI::Success& wanted) { // help or version
        return app.exit(wanted);
    } catch (const CLI::ParseError& error) {
        return wrong_use(app, error);
    } catch (const luft::cli::UsageError& error) { // some show only once the project is open
        return wrong_use(app, error);
    } catch (const luft::Stopped&) {
        return complain("Stopped.", luft::cli::kStoppedStatus);
    } catch (const luft::Error& error) {
        return complain(error.what() + (error.advice().empty() ? "" : " " + error.advice()), kFailed);
    } catch (const std::bad_alloc&) {
        return complain("Out of memory.", kFailed);
    } catch (const std::exception& error) {
        return complain("Something unforeseen happened: " + std::string(error.what()), kFailed);
    }
}

} // namespace

int main(int argc, char** argv) {
    luft::cli::Frame frame;
    const auto app = luft::cli::program(frame);
    return run(*app, frame, argc, argv);
}
