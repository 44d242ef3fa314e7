// luftpause vocabulary: facets, shades and drills, and the coach's own additions to them.
#include "base/text.h"
#include "cli/json_text.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"

namespace luft::cli {
namespace {

using vocabulary::Basis;
using vocabulary::Leaning;

struct Options {
    std::string project, key;
    std::optional<std::string> name, description, aim, caution;
    Basis basis = Basis::coach;
    Leaning leaning = Leaning::neutral;
    std::vector<std::string> steps, trains;
    bool drills = false;
    bool json = false;
};

const std::vector<std::pair<std::string, Basis>> kBases = {
    {"coach", Basis::coach}, {"hint", Basis::hint}, {"measured", Basis::measured}};
const std::vector<std::pair<std::string, Leaning>> kLeanings = {
    {"neutral", Leaning::neutral}, {"strength", Leaning::strength}, {"watch", Leaning::watch}};

template <class Value>
std::string word_of(Value value, const std::vector<std::pair<std::string, Value>>& words) {
    for (const auto& [word, meant] : words)
        if (meant == value) return word;
    return {};
}

std::string facets_text(const vocabulary::Vocabulary& all) {
    std::string text;
    for (const auto& facet : all.facets) {
        text += one_line(facet.key) + " (" + word_of(facet.basis, kBases) + (facet.own ? ", own" : "") +
                "): " + one_line(facet.description) + "\n";
        std::string shades;
        for (const auto& shade : facet.shades)
            shades += (shades.empty() ? "" : ", ") + shade.key;
        text += paragraph(shades, 4);
    }
    return text;
}

std::string drills_text(const vocabulary::Vocabulary& all) {
    std::string text;
    for (const auto& drill : all.drills) {
        text += one_line(drill.key) + ": " + one_line(drill.title) + (drill.own ? " (own)" : "") + "\n";
        text += paragraph(drill.aim, 4);
        int number = 0;
        for (const std::string& step : drill.steps)
            text += paragraph(std::to_string(++number) + ". " + step, 4);
        if (!drill.caution.empty()) text += paragraph(drill.caution, 4);
    }
    return text.empty() ? "No drills.\n" : text;
}

Json value_of(const vocabulary::Vocabulary& all) {
    Json facets = Json::array();
    for (const auto& facet : all.facets) {
        Json shades = Json::array();
        for (const auto& shade : facet.shades)
            shades.push_back({{"key", shade.key},
                              {"name", shade.name},
                              {"description", shade.description},
                              {"leaning", word_of(shade.leaning, kLeanings)}});
        facets.push_back({{"key", facet.key},
                          {"name", facet.name},
                          {"description", facet.description},
                          {"basis", word_of(facet.basis, kBases)},
                          {"own", facet.own},
                          {"shades", shades}});
    }
    Json drills = Json::array();
    for (const auto& drill : all.drills) {
        Json trains = Json::array();
        for (const auto& tag : drill.trains)
            trains.push_back(vocabulary::tag_text(tag));
        drills.push_back({{"key", drill.key},
                          {"title", drill.title},
                          {"aim", drill.aim},
                          {"steps", drill.steps},
                          {"caution", drill.caution},
                          {"trains", trains},
                          {"own", drill.own}});
    }
    return {{"facets", facets}, {"drills", drills}};
}

void list(const Options& options, Frame& frame) {
    const auto all = open_to_read(options.project).vocabulary();
    if (options.json) return frame.print(json_text(value_of(all)));
    frame.print(options.drills ? drills_text(all) : facets_text(all));
}

void add_facet(const Options& options, Frame& frame) {
    open_to_edit(options.project)
        .add_facet({.key = options.key,
                    .name = options.name.value_or(options.key),
                    .description = options.description.value_or(""),
                    .basis = options.basis,
                    .shades = {},
                    .own = true});
    frame.print("Added facet '" + options.key + "'. Next: luftpause vocabulary PROJECT add-shade " +
                options.key + ":SHADE\n");
}

void add_shade(const Options& options, Frame& frame) {
    const auto tag = vocabulary::parse_tag(options.key);
    open_to_edit(options.project)
        .add_shade(tag.facet, {.key = tag.shade,
                               .name = options.name.value_or(tag.shade),
                               .description = options.description.value_or(""),
                               .leaning = options.leaning});
    frame.print("Added shade '" + options.key + "'.\n");
}

/// "onset" stands for the whole facet, "onset:glottal" for one shade.
vocabulary::Tag trained(const std::string& text) {
    if (vocabulary::is_key(text)) return {text, ""};
    return vocabulary::parse_tag(text);
}

void put_drill(const Options& options, Frame& frame) {
    vocabulary::Drill drill{.key = options.key,
                            .title = options.name.value_or(options.key),
                            .aim = options.aim.value_or(""),
                            .steps = options.steps,
                            .caution = options.caution.value_or(""),
                            .trains = {},
                            .own = true};
    for (const std::string& text : options.trains)
        drill.trains.push_back(trained(text));
    open_to_edit(options.project).put_drill(drill);
    frame.print("Put drill '" + options.key + "' into the drill book.\n");
}

Verb& add_action(Verb& verb, const std::shared_ptr<Options>& options, const std::string& name,
                 const std::string& help, const std::string& key, const std::string& arguments) {
    Verb& action = add_verb(verb, name, help, "luftpause vocabulary mill.luft " + name + " " + arguments);
    argument(action, key, options->key, "Lower-case letters, digits and dashes");
    text_option(action, "--name", options->name, "As a teacher says it");
    return action;
}

} // namespace

void offer_vocabulary(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "vocabulary", "List facets, shades and drills, or add your own",
                          "luftpause vocabulary mill.luft list --drills");
    project_and_action(verb, options->project);

    Verb& shown =
        add_verb(verb, "list", "List facets and their shades", "luftpause vocabulary mill.luft list");
    flag(shown, "--drills", options->drills, "List the drill book instead");
    flag(shown, "--json", options->json, "Print all of it as JSON");
    on_run(shown, frame, options, list);

    Verb& facet = add_action(verb, options, "add-facet", "Add a facet of your own", "KEY", "jaw --name Jaw");
    text_option(facet, "--description", options->description, "One sentence");
    choice_option(facet, "--basis", options->basis, kBases, "On what a judgement rests; coach unless given");
    on_run(facet, frame, options, add_facet);

    Verb& shade = add_action(verb, options, "add-shade", "Add a shade to a facet", "FACET:SHADE",
                             "jaw:held --leaning watch");
    text_option(shade, "--description", options->description, "One sentence: what is heard or seen");
    choice_option(shade, "--leaning", options->leaning, kLeanings, "How it usually counts");
    on_run(shade, frame, options, add_shade);

    Verb& drill = add_action(verb, options, "drill", "Put a drill into the drill book, or replace it", "KEY",
                             "loose-jaw --name 'Loose jaw' --trains jaw:held \\\n"
                             "    --step 'Let the jaw hang.' --step 'Sing five notes down on \"ya\".'");
    text_option(drill, "--aim", options->aim, "One sentence: what it trains");
    repeated_option(drill, "--step", options->steps, "TEXT", "A step; may be repeated");
    text_option(drill, "--caution", options->caution, "When to stop");
    repeated_option(drill, "--trains", options->trains, "FACET[:SHADE]", "What it answers; may be repeated");
    on_run(drill, frame, options, put_drill);
}

} // namespace luft::cli
