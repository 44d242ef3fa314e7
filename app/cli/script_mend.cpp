// luftpause script mend: what helps against the warnings, and doing it.
#include "base/text.h"
#include "cli/script_verbs.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "script/gather.h"
#include "script/remedy.h"

#include <limits>

namespace luft::cli {
namespace {

/// Shortening goes in steps; more than these are no help.
constexpr int kMostSteps = 100;
constexpr std::int64_t kAnyNumber = std::numeric_limits<std::int64_t>::max();

struct Options {
    explicit Options(const std::string& named) : project(named) {}

    const std::string& project; ///< read before the action's own options
    std::string performance;
    std::int64_t number = 0;
    bool all = false;
};

std::string list_text(const script::Source& source, const script::CueSheet& sheet) {
    std::string text;
    std::size_t number = 0;
    for (const auto& warning : sheet.warnings) {
        const auto remedy = remedy_for(source, sheet, warning);
        text += std::to_string(++number) + ". " + warning.words + "\n" +
                (remedy ? "   Mend it: " + remedy->words + ".\n" : "   Only you can tell what to change.\n");
    }
    return text.empty() ? "No warnings.\n" : text;
}

std::string mend(project::Project& project, const script::Source& source, const script::CueSheet& sheet,
                 std::size_t index) {
    const auto remedy = remedy_for(source, sheet, sheet.warnings.at(index));
    if (!remedy)
        throw Error(Fault::bad_request,
                    "Nothing that the program could change helps against warning " +
                        std::to_string(index + 1) + ".",
                    "Shorten the words, or leave something out.");
    project.change_script(source.performance.id, remedy->items, "mend the script: " + remedy->words);
    return remedy->words + ".\n";
}

/// One after the other, until only those are left against which nothing helps.
std::string mend_all(project::Project& project, const project::Performance& performance) {
    std::string text;
    for (int step = 0; step < kMostSteps; ++step) {
        const auto source = script::gather(project, performance);
        const auto sheet = script::lay_out(source);
        std::size_t index = 0;
        while (index < sheet.warnings.size() && !remedy_for(source, sheet, sheet.warnings[index]))
            ++index;
        if (index == sheet.warnings.size()) break;
        text += mend(project, source, sheet, index);
    }
    const auto source = script::gather(project, performance);
    return text + list_text(source, script::lay_out(source));
}

void work(const Options& options, Frame& frame) {
    if (options.number == 0 && !options.all) {
        const project::Project project = open_to_read(options.project);
        const auto source = script::gather(project, project.performance(options.performance));
        return frame.print(list_text(source, script::lay_out(source)));
    }
    project::Project project = open_to_edit(options.project);
    const auto performance = project.performance(options.performance);
    if (options.all) return frame.print(mend_all(project, performance));
    const auto source = script::gather(project, performance);
    const auto sheet = script::lay_out(source);
    const auto index = static_cast<std::size_t>(options.number) - 1;
    if (index >= sheet.warnings.size())
        throw Error(Fault::not_found, "There is no warning " + std::to_string(options.number) + ".",
                    "See 'luftpause script PROJECT mend'.");
    frame.print(mend(project, source, sheet, index));
}

} // namespace

void offer_script_mending(Verb& verb, Frame& frame, const std::string& project) {
    const auto options = std::make_shared<Options>(project);
    Verb& mended = add_verb(verb, "mend", "Show what helps against each warning, or do it",
                            "luftpause script mill.luft mend --warning 2");
    whole_option(mended, "--warning", options->number, 1, kAnyNumber, "Number of the warning to mend");
    flag(mended, "--all", options->all, "Mend one after the other");
    performance_option(mended, options->performance);
    on_run(mended, frame, options, work);
}

} // namespace luft::cli
