// luftpause script set: what the script is laid out by.
#include "base/rational.h"
#include "cli/json_text.h"
#include "cli/script_text.h"
#include "cli/script_verbs.h"
#include "cli/sources.h"

#include <charconv>

namespace luft::cli {
namespace {

// The limits below are far beyond any real programme; they catch slips of the keyboard.
constexpr double kSlowestTalk = 20;
constexpr double kFastestTalk = 400;
constexpr std::int64_t kFastestFrames = 300;

struct Options {
    explicit Options(const std::string& named) : project(named) {}

    const std::string& project; ///< read before the action's own options
    std::optional<double> words_per_minute, share;
    std::optional<Seconds> least_between_stops, longest_quote;
    std::optional<Rational> frame_rate; ///< 0 = the video's
    std::optional<bool> drop_frame;
    bool no_share = false;
    bool json = false;

    [[nodiscard]] bool changes() const {
        return words_per_minute || share || least_between_stops || longest_quote || frame_rate ||
               drop_frame || no_share;
    }
};

std::optional<std::int64_t> whole(std::string_view text) {
    std::int64_t value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault != std::errc() || end != text.data() + text.size() || value <= 0) return std::nullopt;
    return value;
}

/// "25", "30000/1001", or "video" for the video's own.
Rational parse_rate(const std::string& text) {
    if (text == "video") return Rational(0);
    const std::size_t slash = text.find('/');
    const auto num = whole(std::string_view(text).substr(0, slash));
    const auto den = slash == std::string::npos ? 1 : whole(std::string_view(text).substr(slash + 1));
    if (!num || !den || *num / *den > kFastestFrames)
        throw UsageError("'" + text + "' is not a frame rate; write 25, 30000/1001, or video");
    return {*num, *den};
}

void set(const Options& options, Frame& frame) {
    const auto print = [&](const project::ScriptSettings& settings) {
        frame.print(options.json ? json_text(settings_value(settings)) : settings_text(settings));
    };
    if (!options.changes()) return print(open_to_read(options.project).script_settings());
    project::Project project = open_to_edit(options.project);
    project::ScriptSettings settings = project.script_settings();
    if (options.words_per_minute) settings.words_per_minute = *options.words_per_minute;
    if (options.least_between_stops) settings.least_between_stops = *options.least_between_stops;
    if (options.longest_quote) settings.longest_quote = *options.longest_quote;
    if (options.share) settings.most_quoted_share = options.share;
    if (options.no_share) settings.most_quoted_share.reset();
    if (options.frame_rate) {
        settings.frame_rate_num = options.frame_rate->num();
        settings.frame_rate_den = options.frame_rate->den();
    }
    if (options.drop_frame) settings.drop_frame = *options.drop_frame;
    project.set_script_settings(settings);
    print(settings);
}

} // namespace

void offer_script_settings(Verb& verb, Frame& frame, const std::string& project) {
    const auto options = std::make_shared<Options>(project);
    Verb& action = add_verb(verb, "set", "Show or change what the script is laid out by",
                            "luftpause script mill.luft set --wpm 140 --longest-quote 0:25 --frame-rate 25");
    number_option(action, "--wpm", options->words_per_minute, kSlowestTalk, kFastestTalk, "Words a minute");
    time_option(action, "--least-between-stops", options->least_between_stops, "Closer stops are reported");
    time_option(action, "--longest-quote", options->longest_quote,
                "A longer stretch without a word is reported");
    number_option(action, "--share", options->share, 0, 1, "Most of the recording to quote, 0 to 1");
    flag(action, "--no-share", options->no_share, "Don't limit the quoted share");
    Options* const set_here = options.get(); // held by on_run
    read_option(
        action, "--frame-rate",
        [set_here](const std::string& text) { set_here->frame_rate = parse_rate(text); }, "RATE",
        "Programme frame rate: 25, 30000/1001, or video for the video's own");
    choice_option<std::optional<bool>>(action, "--drop-frame", options->drop_frame,
                                       {{"yes", true}, {"no", false}},
                                       "Count drop-frame where the rate is 29.97 or 59.94");
    flag(action, "--json", options->json, "Print as JSON");
    on_run(action, frame, options, set);
}

} // namespace luft::cli
