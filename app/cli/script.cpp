// luftpause script: the words between the music: draft, show, add, edit, remove, set, mend.
#include "base/text.h"
#include "cli/script_text.h"
#include "cli/script_verbs.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "script/draft.h"
#include "script/gather.h"

#include <algorithm>

namespace luft::cli {
namespace {

struct Options {
    std::string project, performance;
    bool json = false;
};

/// The summary that every change ends with: how the programme stands now.
std::string figures_text(const script::CueSheet& sheet) {
    return "Running time " + clock_text(seconds(sheet.running_time)) + ", talk " +
           clock_text(seconds(sheet.talk_time)) + ", " + fixed(100 * sheet.quoted_share, 0) +
           " % of the recording quoted, " + counted(sheet.warnings.size(), "warning") + ".\n";
}

void draft(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const auto performance = project.performance(options.performance);
    auto source = script::gather(project, performance);
    if (std::none_of(source.moments.begin(), source.moments.end(),
                     [](const auto& moment) { return moment.state == project::MarkState::kept; }))
        throw Error(Fault::bad_request, "No moment of '" + performance.label + "' is kept yet.",
                    "Keep or add some with 'luftpause moment', then draft.");
    project.store_script(performance.id, script::draft(source));
    source.items = project.script(performance.id);
    const auto count = [&](auto wanted) {
        return static_cast<std::size_t>(std::count_if(source.items.begin(), source.items.end(), wanted));
    };
    using project::ScriptItemKind;
    const auto own = count([](const auto& item) { return item.own_words; });
    frame.print(
        "Drafted " + counted(count([](const auto& i) { return i.kind == ScriptItemKind::stop; }), "stop") +
        " and " + counted(count([](const auto& i) { return i.kind == ScriptItemKind::aside; }), "aside") +
        (own > 0 ? "; " + counted(own, "item") + " in your own words left alone" : std::string()) + ".\n" +
        figures_text(script::lay_out(source)));
}

void show(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    const auto performance = project.performance(options.performance);
    const Labels labels = labels_of(project);
    Json items = Json::array();
    std::string text;
    for (const auto& item : project.script(performance.id)) {
        items.push_back(item_value(item, labels));
        text += item_text(item, labels);
    }
    if (options.json) return frame.print(json_text({{"performance", performance.label}, {"items", items}}));
    frame.print(text.empty() ? "No script yet. Next: luftpause script PROJECT draft\n" : text);
}

} // namespace

void offer_script(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "script", "Draft, show and edit the script of a performance's commentary",
                          "luftpause script mill.luft draft\nluftpause script mill.luft set --wpm 140");
    project_and_action(verb, options->project);

    Verb& drafted = add_verb(verb, "draft", "Draft the script from the kept moments",
                             "luftpause script mill.luft draft --performance A");
    performance_option(drafted, options->performance);
    on_run(drafted, frame, options, draft);

    Verb& shown = add_verb(verb, "show", "Show the script", "luftpause script mill.luft show");
    performance_option(shown, options->performance);
    flag(shown, "--json", options->json, "Print as JSON");
    on_run(shown, frame, options, show);

    offer_script_items(verb, frame, options->project);
    offer_script_settings(verb, frame, options->project);
    offer_script_mending(verb, frame, options->project);
}

} // namespace luft::cli
