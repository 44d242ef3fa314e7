// What a verb takes. The one place, with its .cpp, that knows how the command line is read (CLI11).
#pragma once

#include "base/units.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace CLI {
class App;
}

namespace luft::cli {

/// A verb, or an action of one.
using Verb = CLI::App;

enum class Need { optional, required };

/// A verb of the program, or an action of a verb; `example` stands under its help, one call a line.
Verb& add_verb(Verb& parent, const std::string& name, const std::string& help, const std::string& example);
/// Does this once the whole command line has been read, when the verb was named.
void on_named(Verb& verb, std::function<void()> then);

/// The project that a verb works on.
void project_argument(Verb& verb, std::string& project);
/// The same for a verb with actions, which stand after the project.
void project_and_action(Verb& verb, std::string& project);
/// A word that must be there.
void argument(Verb& verb, const std::string& name, std::string& into, const std::string& help);
/// Words, at least one.
void arguments(Verb& verb, const std::string& name, std::vector<std::string>& into, const std::string& help);
/// A word that may be left out.
void optional_argument(Verb& verb, const std::string& name, std::string& into, const std::string& help);
/// Labels of performances, as many as are named; none need be.
void labels_argument(Verb& verb, std::vector<std::string>& labels, const std::string& help);
/// Ids of marks, moments or script items; several where `how_many` is kOneOrMore.
void ids_argument(Verb& verb, std::vector<std::int64_t>& ids, int how_many, const std::string& help);
inline constexpr int kOneOrMore = -1;

/// The performance that a verb works on; may be left out while there is only one.
void performance_option(Verb& verb, std::string& label);
/// Where the result goes instead of to standard output.
void out_option(Verb& verb, std::string& out);

void flag(Verb& verb, const std::string& name, bool& into, const std::string& help);
/// `type` says in the help what to write.
void string_option(Verb& verb, const std::string& name, std::string& into, const std::string& type,
                   const std::string& help);
/// May be given several times.
void repeated_option(Verb& verb, const std::string& name, std::vector<std::string>& into,
                     const std::string& type, const std::string& help);
/// Free text; text that isn't UTF-8 is a usage error.
void text_option(Verb& verb, const std::string& name, std::optional<std::string>& into,
                 const std::string& help, Need need = Need::optional);
void time_option(Verb& verb, const std::string& name, std::optional<Seconds>& into, const std::string& help,
                 Need need = Need::optional);
/// Two times.
void span_option(Verb& verb, const std::string& name, std::optional<Span>& into, const std::string& help);
/// A number from `low` to `high`; anything else is a usage error.
void number_option(Verb& verb, const std::string& name, std::optional<double>& into, double low, double high,
                   const std::string& help);
void whole_option(Verb& verb, const std::string& name, std::int64_t& into, std::int64_t low,
                  std::int64_t high, const std::string& help);
/// A value that `read` understands; it throws UsageError where it doesn't.
void read_option(Verb& verb, const std::string& name, const std::function<void(const std::string&)>& read,
                 const std::string& type, const std::string& help, Need need = Need::optional);

/// The place of `given` among the words. Throws UsageError, naming them all.
std::size_t choose(const std::string& option, const std::string& given,
                   const std::vector<std::string>& words);

/// One of a few words, each standing for a value.
template <class Value>
void choice_option(Verb& verb, const std::string& name, Value& into,
                   const std::vector<std::pair<std::string, Value>>& choices, const std::string& help,
                   Need need = Need::optional) {
    std::vector<std::string> words;
    std::string all;
    for (const auto& [word, value] : choices) {
        words.push_back(word);
        all += (all.empty() ? "" : "|") + word;
    }
    const auto read = [&into, choices, words, name](const std::string& given) {
        into = choices[choose(name, given, words)].second;
    };
    read_option(verb, name, read, all, help, need);
}

} // namespace luft::cli
