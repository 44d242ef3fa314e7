// luftpause piece: what the project says about the piece, and changes to it.
#include "cli/json_text.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "project/spread_words.h"

namespace luft::cli {
namespace {

struct Options {
    std::string project;
    std::optional<std::string> title, writer, key, metre;
    std::string words_file;
    bool json = false;

    [[nodiscard]] bool changes() const { return title || writer || key || metre || !words_file.empty(); }
};

void show(const project::Piece& piece, bool as_json, Frame& frame) {
    if (as_json) {
        const Json value = {{"title", piece.title},
                            {"writer", piece.writer},
                            {"key", piece.key},
                            {"metre", piece.metre},
                            {"words", piece.words}};
        return frame.print(json_text(value));
    }
    std::string text = one_line(piece.title) + "\n";
    const auto line = [&](const char* name, const std::string& value) {
        if (!value.empty()) text += std::string(name) + one_line(value) + "\n";
    };
    line("Writer:  ", piece.writer);
    line("Key:     ", piece.key);
    line("Metre:   ", piece.metre);
    if (!piece.words.empty()) text += "Words:\n" + paragraph(piece.words, 2);
    frame.print(text);
}

void work(const Options& options, Frame& frame) {
    if (!options.changes()) return show(open_to_read(options.project).piece(), options.json, frame);
    project::Project project = open_to_edit(options.project);
    project::Piece piece = project.piece();
    if (options.title) piece.title = *options.title;
    if (options.writer) piece.writer = *options.writer;
    if (options.key) piece.key = *options.key;
    if (options.metre) piece.metre = *options.metre;
    if (!options.words_file.empty()) piece.words = read_text_file(options.words_file);
    if (piece.title.find_first_not_of(" \t") == std::string::npos) throw UsageError("--title is empty");
    project.set_piece(piece);
    if (!options.words_file.empty())
        for (const auto& performance : project.performances())
            project::spread_sung_words(project, performance.id);
    show(piece, options.json, frame);
}

} // namespace

void offer_piece(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "piece", "Show what the project says about the piece, or change it",
                          "luftpause piece mill.luft --metre 6/8");
    project_argument(verb, options->project);
    text_option(verb, "--title", options->title, "New title");
    text_option(verb, "--writer", options->writer, "Who wrote it");
    text_option(verb, "--key", options->key, "Key");
    text_option(verb, "--metre", options->metre, "Metre");
    string_option(verb, "--words", options->words_file, "FILE",
                  "Text file with the words, one sung line a line; they are spread over the notes");
    flag(verb, "--json", options->json, "Print as JSON");
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
