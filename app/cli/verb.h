// What every verb shares: how it is offered, where it prints, and how it is stopped.
#pragma once

#include "base/progress.h"
#include "base/units.h"
#include "cli/progress_line.h"

#include <CLI/CLI.hpp>

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace luft::cli {

/// The frame that a verb runs in. The command line is read first and chooses the work; the work runs after.
class Frame {
  public:
    /// Chooses the work; it runs once the whole command line has been read.
    void choose(std::function<void()> work) { work_ = std::move(work); }
    void run();

    /// Prints to standard output. Throws Error(cannot_write) when it can't be written (a full disk, say).
    void print(std::string_view text) const;

    /// One line for a person about something beside the result; to standard error.
    void note(std::string_view line) const;

    /// The result of a verb: into the file `out`, whole or not at all, or to standard output when `out` is
    /// empty. Throws Error(bad_request) when `out` is one of `sources`, which are never written over.
    void deliver(std::string_view text, const std::string& out,
                 const std::vector<std::filesystem::path>& sources) const;

    /// For long work: shows how far it is, on a terminal only, and stops it at Ctrl+C.
    Progress progress();

  private:
    std::function<void()> work_;
    std::optional<ProgressLine> line_;
};

/// Lets a verb do `work(options, frame)`. `options` outlives the reading of the command line.
template <class Options>
void on_run(CLI::App* verb, Frame& frame, std::shared_ptr<Options> options,
            void (*work)(const Options&, Frame&)) {
    verb->callback(
        [&frame, options, work] { frame.choose([&frame, options, work] { work(*options, frame); }); });
}

/// The example under a verb's help.
void example(CLI::App* verb, const std::string& lines);

/// The project that a verb works on.
void project_option(CLI::App* verb, std::string& project);
/// The same for a verb with actions, which stand after the project.
void project_and_action(CLI::App* verb, std::string& project);
/// Ids of marks, moments or script items; several where `how_many` is kOneOrMore.
void ids_option(CLI::App* action, std::vector<std::int64_t>& ids, int how_many, const std::string& help);
inline constexpr int kOneOrMore = -1;
/// The performance that it works on; may be left out while there is only one.
void performance_option(CLI::App* verb, std::string& label);
/// Where the result goes instead of to standard output.
void out_option(CLI::App* verb, std::string& out);

/// Free text as an option; text that isn't UTF-8 is a usage error.
CLI::Option* text_option(CLI::App* verb, const std::string& name, std::optional<std::string>& into,
                         const std::string& help);

/// A time as an option; a wrong one is a usage error.
CLI::Option* time_option(CLI::App* verb, const std::string& name, std::optional<Seconds>& into,
                         const std::string& help);

/// A number from `low` to `high` as an option; anything else is a usage error.
CLI::Option* number_option(CLI::App* verb, const std::string& name, std::optional<double>& into, double low,
                           double high, const std::string& help);

/// One of a few words as an option, each standing for a value; any other word is a usage error.
template <class Value>
CLI::Option* choice_option(CLI::App* verb, const std::string& name, Value& into,
                           const std::vector<std::pair<std::string, Value>>& words, const std::string& help) {
    std::string all;
    for (const auto& [word, value] : words)
        all += (all.empty() ? "" : "|") + word;
    return verb
        ->add_option_function<std::string>(
            name,
            [&into, words, name, all](const std::string& given) {
                for (const auto& [word, value] : words)
                    if (word == given) return void(into = value);
                throw CLI::ValidationError(name + " must be one of " + all + ", not '" + given + "'");
            },
            help)
        ->type_name(all);
}

/// Reads "12.5", "1:02.5" or "1:01:02.5". Throws CLI::ValidationError for anything else and below 0.
Seconds parse_time(const std::string& text);

/// A whole text file without the line ends at its end. Throws Error(not_found, unreadable), also for text
/// that isn't UTF-8.
std::string read_text_file(const std::string& file);

} // namespace luft::cli
