#include "cli/listen_several.h"

#include "base/in_parallel.h"
#include "base/text.h"
#include "base/write_file.h"
#include "cli/table.h"
#include "export/analysis_json.h"
#include "files/formats.h"
#include "files/sources.h"
#include "files/stems.h"
#include "files/write_all.h"

#include <mutex>
#include <new>
#include <utility>

namespace luft::cli {
namespace {

using Paths = std::vector<std::filesystem::path>;

constexpr std::string_view kDoing = "listening to the recordings";

/// One file a name in the folder, in their order; the folder is made, and no source is among them.
Paths places_in(const std::string& folder, const std::vector<std::string>& names, const Paths& sources) {
    std::error_code refused;
    std::filesystem::create_directories(folder, refused);
    if (refused)
        throw Error(Fault::cannot_write, "'" + folder + "' can't be made: " + refused.message() + ".");
    Paths places;
    files::Stems stems;
    for (const std::string& name : names) {
        places.push_back(std::filesystem::path(folder) / (stems.take(name) + ".json"));
        files::spare(places.back(), sources);
    }
    return places;
}

/// Says how each came out, and remembers those that failed.
class Told {
  public:
    explicit Told(Frame& frame) : frame_(frame) {}

    void well(const std::string& name, const std::string& found) {
        frame_.print(one_line(name) + ": " + found + ".\n");
    }
    void badly(const std::string& name, const std::exception_ptr& fault) {
        failed_.push_back(name);
        try {
            std::rethrow_exception(fault);
        } catch (const Error& error) {
            if (failed_.size() == 1) first_ = error.fault();
            frame_.note(
                one_line(name + ": " + error.what() + (error.advice().empty() ? "" : " " + error.advice())));
        } catch (const std::bad_alloc&) {
            frame_.note(one_line(name + ": out of memory."));
        } catch (const std::exception& error) {
            frame_.note(one_line(name + ": something unforeseen happened: " + error.what()));
        }
    }
    /// Throws Error when one has failed.
    void finish(std::size_t of) const {
        if (failed_.empty()) return;
        std::string names;
        for (const std::string& name : failed_)
            names += (names.empty() ? "" : ", ") + name;
        throw Error(first_, std::to_string(failed_.size()) + " of " + counted(of, "recording") +
                                " couldn't be listened to: " + names + ".");
    }

  private:
    Frame& frame_;
    std::vector<std::string> failed_;
    Fault first_ = Fault::unreadable;
};

} // namespace

void listen_to_files(const std::vector<std::string>& files, const Several& how, Frame& frame) {
    std::vector<std::string> names;
    names.reserve(files.size());
    for (const std::string& file : files)
        names.push_back(std::filesystem::path(file).stem().string());
    const Paths places = places_in(how.folder, names, {files.begin(), files.end()});
    Told told(frame);
    std::vector<std::string> found(files.size());
    in_parallel(
        files.size(), how.jobs, frame.progress(), kDoing,
        [&](std::size_t i, const Progress& progress) {
            const intake::Heard heard =
                intake::hear([&] { return open_file(files[i]); }, how.listening, kPartialRemedy, progress);
            write_file(places[i], exports::analysis_json(heard.analysis, heard.facts));
            found[i] = places[i].string() + ", " + counts_text(heard.analysis);
        },
        [&](std::size_t i, const std::exception_ptr& fault) {
            fault ? told.badly(files[i], fault) : told.well(files[i], found[i]);
        });
    told.finish(files.size());
}

void listen_again(project::Project& project, const std::vector<project::Performance>& performances,
                  const Several& how, Frame& frame) {
    Paths places;
    if (!how.folder.empty()) {
        std::vector<std::string> names;
        names.reserve(performances.size());
        for (const auto& performance : performances)
            names.push_back(files::file_stem(performance.label));
        places = places_in(how.folder, names, files::files_of(project));
    }
    Told told(frame);
    std::mutex one_at_a_time; // a project is for one thread
    std::vector<std::optional<intake::Heard>> heard(performances.size());
    in_parallel(
        performances.size(), how.jobs, frame.progress(), kDoing,
        [&](std::size_t i, const Progress& progress) {
            const auto open = [&] {
                const std::lock_guard hold(one_at_a_time);
                return project.media(performances[i], false, {}, progress);
            };
            // Whether it may be partial was decided when it was added.
            heard[i] = intake::hear(open, {how.listening.accompaniment, true}, {}, progress);
            if (!places.empty())
                write_file(places[i], exports::analysis_json(heard[i]->analysis, heard[i]->facts));
        },
        [&](std::size_t i, const std::exception_ptr& fault) {
            const std::string& label = performances[i].label;
            if (fault) return told.badly(label, fault);
            const std::lock_guard hold(one_at_a_time);
            const auto stored = intake::store_again(project, performances[i], *std::exchange(heard[i], {}));
            told.well(label, counts_text(stored.heard->analysis));
        });
    told.finish(performances.size());
}

} // namespace luft::cli
