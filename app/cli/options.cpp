#include "cli/options.h"

#include "base/text.h"
#include "cli/typed.h"

#include <CLI/CLI.hpp>

#include <algorithm>

namespace luft::cli {
namespace {

CLI::Option* project(Verb& verb, std::string& into) {
    return verb.add_option("PROJECT", into, "The project file, NAME.luft")->type_name("");
}

void set_need(CLI::Option* option, Need need) {
    option->required(need == Need::required);
}

} // namespace

Verb& add_verb(Verb& parent, const std::string& name, const std::string& help, const std::string& example) {
    Verb* verb = parent.add_subcommand(name, help);
    std::string indented = "  ";
    for (const char c : example)
        indented += c == '\n' ? std::string("\n  ") : std::string(1, c);
    verb->footer("Example:\n" + indented);
    return *verb;
}

void on_named(Verb& verb, std::function<void()> then) {
    verb.callback(std::move(then));
}

void project_argument(Verb& verb, std::string& into) {
    project(verb, into)->required();
}

void project_and_action(Verb& verb, std::string& into) {
    // Not `required()`: that would take the name of an action for the project, so that neither
    // `luftpause mark keep --help` nor a forgotten project would be understood.
    project(verb, into);
    verb.require_subcommand(1);
    verb.parse_complete_callback([&into] {
        if (into.empty()) throw UsageError("PROJECT is required");
    });
}

void argument(Verb& verb, const std::string& name, std::string& into, const std::string& help) {
    verb.add_option(name, into, help)->required()->type_name("");
}

void arguments(Verb& verb, const std::string& name, std::vector<std::string>& into, const std::string& help) {
    verb.add_option(name, into, help)->required()->type_name("");
}

void optional_argument(Verb& verb, const std::string& name, std::string& into, const std::string& help) {
    verb.add_option(name, into, help)->type_name("");
}

void labels_argument(Verb& verb, std::vector<std::string>& labels, const std::string& help) {
    verb.add_option("LABELS", labels, help)->type_name("");
}

void ids_argument(Verb& verb, std::vector<std::int64_t>& ids, int how_many, const std::string& help) {
    CLI::Option* option = how_many == 1 ? verb.add_option_function<std::int64_t>(
                                              "ID", [&ids](const std::int64_t& id) { ids = {id}; }, help)
                                        : verb.add_option("ID", ids, help)->expected(how_many);
    option->required()->type_name("");
}

void performance_option(Verb& verb, std::string& label) {
    string_option(verb, "--performance", label, "LABEL", "Which performance; needed when there are several");
}

void out_option(Verb& verb, std::string& out) {
    string_option(verb, "--out", out, "FILE", "Write to this file instead of to the terminal");
}

void flag(Verb& verb, const std::string& name, bool& into, const std::string& help) {
    verb.add_flag(name, into, help);
}

void string_option(Verb& verb, const std::string& name, std::string& into, const std::string& type,
                   const std::string& help) {
    verb.add_option(name, into, help)->type_name(type);
}

void repeated_option(Verb& verb, const std::string& name, std::vector<std::string>& into,
                     const std::string& type, const std::string& help) {
    verb.add_option(name, into, help)
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll)
        ->type_name(type);
}

void read_option(Verb& verb, const std::string& name, const std::function<void(const std::string&)>& read,
                 const std::string& type, const std::string& help, Need need) {
    set_need(verb.add_option_function<std::string>(name, read, help)->type_name(type), need);
}

void text_option(Verb& verb, const std::string& name, std::optional<std::string>& into,
                 const std::string& help, Need need) {
    const auto read = [&into, name](const std::string& text) {
        if (!is_utf8(text)) throw UsageError(name + " is not UTF-8 text");
        into = text;
    };
    read_option(verb, name, read, "TEXT", help, need);
}

void time_option(Verb& verb, const std::string& name, std::optional<Seconds>& into, const std::string& help,
                 Need need) {
    const auto read = [&into](const std::string& text) { into = parse_time(text); };
    read_option(verb, name, read, "TIME", help, need);
}

void span_option(Verb& verb, const std::string& name, std::optional<Span>& into, const std::string& help) {
    verb.add_option_function<std::vector<std::string>>(
            name,
            [&into, name](const std::vector<std::string>& times) {
                const Span span{parse_time(times.at(0)), parse_time(times.at(1))};
                if (span.end <= span.start) throw UsageError(name + " must end after it starts");
                into = span;
            },
            help)
        ->expected(2)
        ->type_name("FROM TO");
}

void number_option(Verb& verb, const std::string& name, std::optional<double>& into, double low, double high,
                   const std::string& help) {
    verb.add_option_function<double>(
            name,
            [&into, low, high, name](const double& value) {
                if (!(value >= low && value <= high)) // so written, 'not a number' fails too
                    throw UsageError(name + " must be from " + fixed(low, low < 1 ? 2 : 0) + " to " +
                                     fixed(high, 0));
                into = value;
            },
            help)
        ->type_name("NUMBER");
}

void whole_option(Verb& verb, const std::string& name, std::int64_t& into, std::int64_t low,
                  std::int64_t high, const std::string& help) {
    verb.add_option(name, into, help)->check(CLI::Range(low, high))->type_name("NUMBER");
}

std::size_t choose(const std::string& option, const std::string& given,
                   const std::vector<std::string>& words) {
    const auto found = std::find(words.begin(), words.end(), given);
    if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
    std::string all;
    for (const std::string& word : words)
        all += (all.empty() ? "" : ", ") + word;
    throw UsageError(option + " must be one of " + all + ", not '" + given + "'");
}

} // namespace luft::cli
