// luftpause new: a project file for a piece.
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"

namespace luft::cli {
namespace {

struct Options {
    std::string project;
    std::optional<std::string> title, writer, key, metre;
    std::string words_file;
};

void make(const Options& options, Frame& frame) {
    project::Piece piece{.title = *options.title,
                         .writer = options.writer.value_or(""),
                         .key = options.key.value_or(""),
                         .metre = options.metre.value_or(""),
                         .words = ""};
    if (piece.title.find_first_not_of(" \t") == std::string::npos) throw UsageError("--title is empty");
    if (!options.words_file.empty()) piece.words = read_text_file(options.words_file);
    project::Project::create(options.project, piece);
    frame.print("Made '" + one_line(options.project) + "' for '" + one_line(piece.title) +
                "'. Next: luftpause add PROJECT RECORDING\n");
}

} // namespace

void offer_new(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb =
        add_verb(app, "new", "Make a project file for a piece",
                 "luftpause new mill.luft --title 'The Mill at Night' --key 'D major' --words mill.txt");
    project_argument(verb, options->project);
    text_option(verb, "--title", options->title, "Title of the piece", Need::required);
    text_option(verb, "--writer", options->writer, "Who wrote it");
    text_option(verb, "--key", options->key, "Key, as 'D major'");
    text_option(verb, "--metre", options->metre, "Metre, as 3/4");
    string_option(verb, "--words", options->words_file, "FILE",
                  "Text file with the words, one sung line a line");
    on_run(verb, frame, options, make);
}

} // namespace luft::cli
