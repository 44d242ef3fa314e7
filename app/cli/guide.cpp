// luftpause guide: the programme as a movie to cut along.
#include "base/text.h"
#include "cli/sources.h"
#include "cli/verbs.h"
#include "cli/write_format.h"
#include "files/guide_file.h"
#include "files/write_all.h"

#include <charconv>

namespace luft::cli {
namespace {

struct Options {
    std::string project, performance, out;
    guide::Options guide;
    bool no_voice = false;
};

constexpr int kLeastSide = 64, kMostSide = 4096;

/// "1280x720". Throws UsageError.
void read_size(const std::string& text, guide::Options& into) {
    const char* const end = text.data() + text.size();
    const auto [cross, wide] = std::from_chars(text.data(), end, into.width);
    const bool crossed = wide == std::errc() && cross != end && *cross == 'x';
    const auto [rest, high] =
        crossed ? std::from_chars(cross + 1, end, into.height) : std::from_chars_result{end, wide};
    const auto fits = [](int side) { return side >= kLeastSide && side <= kMostSide && side % 2 == 0; };
    if (!crossed || high != std::errc() || rest != end || !fits(into.width) || !fits(into.height))
        throw UsageError("--size must be width and height, even numbers from " + std::to_string(kLeastSide) +
                         " to " + std::to_string(kMostSide) + ", as 1280x720");
}

void work(const Options& options, Frame& frame) {
    if (options.out.empty()) throw UsageError("say where to write it: --out FILE");
    const project::Project project = open_to_read(options.project);
    Material material(project, project.performance(options.performance));
    files::spare(options.out, files_of(project));
    const guide::Report report =
        files::write_guide_file(material, options.out, options.guide, !options.no_voice, frame.progress());
    frame.print("Wrote '" + options.out + "': " + clock_text(seconds(report.length)) + ", " +
                std::to_string(report.width) + " x " + std::to_string(report.height) + ", " +
                report.codecs.picture + " and " + report.codecs.sound + ".\n");
    for (const std::string& sentence : material.take_notes())
        frame.note(sentence);
}

} // namespace

void offer_guide(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb =
        add_verb(app, "guide", "Write the guide movie: the recording with its halts, to cut along",
                 "luftpause guide mill.luft --out mill-guide.mp4 --slate --timecode\n"
                 "luftpause guide mill.luft --performance A --out a.mkv --size 1920x1080 --no-voice");
    project_argument(verb, options->project);
    performance_option(verb, options->performance);
    string_option(verb, "--out", options->out, "FILE", "The movie: .mp4, .mkv or .mov");
    flag(verb, "--slate", options->guide.slate, "Show each stop's number and title while it halts");
    flag(verb, "--timecode", options->guide.timecode, "Show the programme's time in the picture");
    read_option(
        verb, "--size", [options](const std::string& text) { read_size(text, options->guide); }, "WxH",
        "Size of the picture; unless given the video's own, at most 1280x720");
    flag(verb, "--no-voice", options->no_voice, "Leave out the recorded talk");
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
