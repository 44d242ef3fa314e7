// Any words on the command line: understood, or refused in words. No verb is run.
#include "cli/help.h"
#include "cli/typed.h"
#include "cli/verbs.h"
#include "fuzz/target.h"

#include <CLI/CLI.hpp>

#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // Words end at line ends; CLI11 takes them last one first.
    std::vector<std::string> words;
    std::string word;
    for (const char c : luft::fuzz::text_of(data, size)) {
        if (c == '\n')
            words.insert(words.begin(), std::exchange(word, {}));
        else if (c != '\0')
            word += c; // the system ends a word there
    }
    if (!word.empty()) words.insert(words.begin(), word);

    CLI::App app("", "luftpause");
    app.formatter(std::make_shared<luft::cli::HelpFormatter>());
    app.require_subcommand(1);
    luft::cli::Frame frame;
    luft::cli::offer_all(app, frame);
    try {
        app.parse(words);
    } catch (const CLI::Error& e) {
        luft::fuzz::demand(e.get_exit_code() == 0 || *e.what() != '\0', "wrong use is told in words");
    } catch (const luft::cli::UsageError& e) {
        luft::fuzz::demand(*e.what() != '\0', "wrong use is told in words");
    }
    return 0;
}
