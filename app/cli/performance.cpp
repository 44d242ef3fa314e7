// luftpause performance: the performances of a project, their notes, and where their recordings are.
#include "base/text.h"
#include "cli/hear.h"
#include "cli/json_text.h"
#include "cli/script_text.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"

namespace luft::cli {
namespace {

struct Options {
    std::string project, label, media;
    std::optional<std::string> performer, source, permission;
    bool json = false;
};

Json value_of(const project::Performance& it, bool listened) {
    return {{"label", it.label},
            {"performer", it.performer},
            {"source", it.source},
            {"permission", it.permission},
            {"media", it.media.path},
            {"carried", it.media.carried},
            {"duration_s", it.facts.duration.value()},
            {"has_video", it.facts.has_video},
            {"listened_to", listened}};
}

void list(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    Table table(
        {{"LABEL"}, {"LENGTH", Align::right}, {"PERFORMER"}, {"RECORDING"}, {"PERMISSION"}, {"HEARD"}});
    Json values = Json::array();
    for (const auto& it : project.performances()) {
        const bool listened = project.listening(it.id).has_value();
        values.push_back(value_of(it, listened));
        table.add({it.label, clock_text(it.facts.duration), it.performer,
                   it.media.path + (it.media.carried ? " (carried)" : ""), it.permission,
                   listened ? "yes" : "not yet"});
    }
    if (options.json) return frame.print(json_text(values));
    frame.print(table.empty() ? "No performances yet. Next: luftpause add PROJECT RECORDING\n"
                              : table.text());
}

void set_notes(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const project::Performance it = project.performance(options.label);
    project.set_performance_notes(it.id, options.performer.value_or(it.performer),
                                  options.source.value_or(it.source),
                                  options.permission.value_or(it.permission));
    frame.print("Noted for '" + one_line(it.label) + "'.\n");
}

void relink(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const project::Performance it = project.performance(options.label);
    project.relink(it.id, options.media, frame.progress());
    frame.print("'" + one_line(it.label) + "' is linked to '" + one_line(options.media) + "'.\n");
}

/// What of the other performances' work leads to one; a sentence each, none where nothing does.
std::string lost_with(const project::Project& project, const project::Performance& gone) {
    std::size_t stops = 0, moments = 0;
    std::string drafts, own;
    for (const project::Performance& other : project.performances()) {
        if (other.id == gone.id) continue;
        for (const auto& moment : project.moments(other.id))
            moments += moment.beside && moment.beside->performance == gone.id ? 1 : 0;
        const std::size_t before = stops;
        for (const auto& item : project.script(other.id)) {
            if (!item.quote || item.quote->performance != gone.id) continue;
            ++stops;
            if (item.own_words) own += (own.empty() ? "" : ", ") + item_name(item);
        }
        if (stops > before)
            drafts += "Next, so that no drafted words lead to it: luftpause script PROJECT draft "
                      "--performance '" +
                      one_line(other.label) + "'\n";
    }
    if (stops + moments == 0) return {};
    return counted(stops, "stop") + " and " + counted(moments, "moment") + " lost what they quoted of it.\n" +
           drafts +
           (own.empty() ? ""
                        : "A draft leaves your own words alone; see whether they lead to it: " + own + ".\n");
}

void remove(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const project::Performance it = project.performance(options.label);
    const std::string lost = lost_with(project, it);
    project.remove_performance(it.id);
    frame.print("Removed '" + one_line(it.label) +
                "' from the project; the recording itself is untouched.\n" + lost);
}

/// An action on one performance, which is named after it.
Verb& add_action(Verb& verb, const std::shared_ptr<Options>& options, const std::string& name,
                 const std::string& help, const std::string& arguments) {
    Verb& action = add_verb(verb, name, help, "luftpause performance mill.luft " + name + " " + arguments);
    argument(action, "LABEL", options->label, "Which performance");
    return action;
}

} // namespace

void offer_performance(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "performance", "List a project's performances, or change what is noted",
                          "luftpause performance mill.luft list\n"
                          "luftpause performance mill.luft notes A --permission 'written, 3 May'");
    project_and_action(verb, options->project);

    Verb& shown = add_verb(verb, "list", "List them", "luftpause performance mill.luft list --json");
    flag(shown, "--json", options->json, "Print as JSON");
    on_run(shown, frame, options, list);

    Verb& noted = add_action(verb, options, "notes", "Note performer, source and permission",
                             "A --performer 'Mara Velin'");
    text_option(noted, "--performer", options->performer, "Who sings");
    text_option(noted, "--source", options->source, "Where the recording is from");
    text_option(noted, "--permission", options->permission, "Under which permission it is quoted");
    on_run(noted, frame, options, set_notes);

    Verb& moved = add_action(verb, options, "relink", "Link to the same recording at another place",
                             "A videos/cover.mp4");
    argument(moved, "MEDIA", options->media, "Where the recording is now");
    on_run(moved, frame, options, relink);

    on_run(add_action(verb, options, "remove", "Take it out of the project", "B"), frame, options, remove);
}

} // namespace luft::cli
