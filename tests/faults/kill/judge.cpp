#include "judge.h"

#include "tools/pdf_words.h"

#include <cctype>
#include <csignal>
#include <cstring>

namespace faults {
namespace {

constexpr int kKilled = 128 + SIGKILL;
constexpr int kFailed = 1;

/// Names that say of themselves that they are no one's result.
bool is_unfinished(const std::string& name) {
    return name.find(".part-") != std::string::npos || name.ends_with(".luft-part") ||
           name.ends_with("-journal");
}

/// The edits that aren't undone, oldest first, and all that the coach has.
std::string state_of(const Project& project) {
    std::string state;
    for (const JournalEntry& entry : project.journal(10'000))
        if (!entry.undone) state = entry.label + "\n" + state;
    return state + contents(project.file(), false);
}

std::size_t edits_in(const Project& project) {
    const auto all = project.journal(10'000);
    return static_cast<std::size_t>(std::ranges::count(all, false, &JournalEntry::undone));
}

std::string without_digits(std::string text) {
    std::erase_if(text, [](unsigned char c) { return std::isdigit(c) != 0; });
    return text;
}

bool same_file(const fs::path& a, const fs::path& b) {
    // Cairo numbers what is in a drawing by all that it has drawn before.
    if (a.extension() == ".svg") return without_digits(read_all(a)) == without_digits(read_all(b));
    if (a.extension() == ".luft") return contents(a) == contents(b);
    if (a.extension() != ".pdf") return read_all(a) == read_all(b);
    // The time of its making is in it: the words say whether all pages are there.
    const auto left = pdf_words(a), right = pdf_words(b);
    return std::ranges::equal(left, right, {}, &PdfWord::text, &PdfWord::text);
}

} // namespace

const Undisturbed& undisturbed(const Work& work) {
    static std::map<std::string, std::unique_ptr<Undisturbed>> all;
    auto& one = all[work.name];
    if (!one) one = std::make_unique<Undisturbed>(work);
    return *one;
}

Undisturbed::Undisturbed(Work work) : work_(std::move(work)) {
    work_.furnish(furnished_.path());
    for (const std::string& name : furnished_.names())
        names_before_.insert(name);
    fs::copy(furnished_.path(), finished_.path(),
             fs::copy_options::recursive | fs::copy_options::overwrite_existing);
    const auto began = std::chrono::steady_clock::now();
    const Tried tried =
        try_failing(LUFT_PROGRAM, in(finished_.path(), work_.arguments), finished_.path(), {});
    lasts_ = std::chrono::steady_clock::now() - began;
    INFO(work_.name << ": " << tried.outcome.err);
    REQUIRE(tried.outcome.status == 0);
    calls_ = tried.calls;
    REQUIRE(calls_.size() > 3); // else nothing would be disturbed
    if (!work_.makes.empty()) end_ = contents(finished_ / work_.makes);
    if (work_.project.empty()) return;
    end_ = contents(finished_ / work_.project);
    // From the state with more edits back to the one with fewer.
    Room before(furnished_.path()), after(finished_.path());
    Project first = Project::open(before / work_.project), last = Project::open(after / work_.project);
    const bool adds = edits_in(last) >= edits_in(first);
    Project& from = adds ? last : first;
    const std::size_t least = std::min(edits_in(last), edits_in(first));
    for (states_ = {state_of(from)}; edits_in(from) > least; states_.push_back(state_of(from)))
        REQUIRE(from.undo());
    if (adds) std::ranges::reverse(states_);
}

void Undisturbed::disturb(const Failing& failing, Row& row) const {
    INFO(work_.name << ", at call " << failing.at << " of " << calls_.size()
                    << (failing.half ? ", half of it written" : "")
                    << (failing.kill ? ", killed" : std::string(", ") + std::strerror(failing.error)));
    row.run();
    const Room room(furnished_.path());
    const fs::path& folder = room.folder.path();
    const Tried tried = try_failing(LUFT_PROGRAM, in(folder, work_.arguments), folder, failing);
    INFO((tried.calls.size() >= static_cast<std::size_t>(failing.at)
              ? tried.calls[static_cast<std::size_t>(failing.at) - 1]
              : "never reached"));
    row.must(tried.calls.size() >= static_cast<std::size_t>(failing.at), "the fault wasn't reached");
    INFO("status " << tried.outcome.status << ": " << tried.outcome.err);
    judge_outcome(tried, failing, row);
    judge_left(room, tried.outcome.status == 0, row);
}

void Undisturbed::kill_at(double share, Row& row) const {
    const Room room(furnished_.path());
    Child child(LUFT_PROGRAM, in(room.folder.path(), work_.arguments));
    const auto after = std::chrono::duration_cast<std::chrono::milliseconds>(share * lasts_);
    std::optional<Outcome> ended = child.wait_for(after);
    if (!ended) {
        child.signal(SIGKILL);
        ended = child.wait();
        row.run();
    }
    INFO(work_.name << ", killed after " << after.count() << " ms, status " << ended->status << ": "
                    << ended->err);
    row.must(ended->status == 0 || ended->status == kKilled,
             "it ended with status " + std::to_string(ended->status));
    judge_left(room, ended->status == 0, row);
}

void Undisturbed::judge_left(const Room& room, bool said_done, Row& row) const {
    const fs::path& folder = room.folder.path();
    judge_files(folder, row);
    bool begun = false, finished = said_done;
    if (!work_.project.empty()) {
        const std::size_t edits = judge_project(room / work_.project, row);
        begun = edits > 0;
        if (states_.size() > 1) finished = edits + 1 == states_.size();
        row.must(!said_done || finished, "it said that it was done, and it wasn't");
    }
    if (!work_.makes.empty()) {
        finished = judge_made(room / work_.makes, row);
        row.must(!said_done || finished, "it said that it was made, and it wasn't");
        for (const std::string& name : names_before_)
            row.must(read_all(folder / name) == read_all(furnished_ / name), name + " was changed");
    }
    judge_again(folder, begun, finished, row);
}

void Undisturbed::judge_outcome(const Tried& tried, const Failing& failing, Row& row) const {
    row.must(!tried.hung, "it hung");
    if (failing.kill) {
        row.must(tried.outcome.status == kKilled, "it wasn't killed");
        return;
    }
    row.must(tried.outcome.status == 0 || tried.outcome.status == kFailed,
             "it ended with status " + std::to_string(tried.outcome.status));
    if (tried.outcome.status != kFailed) return;
    const std::string& said = tried.outcome.err;
    row.must(said.find("luftpause: ") != std::string::npos && said.ends_with("\n"), "it didn't say why");
    row.must(said.find("unforeseen") == std::string::npos, "it said: " + said);
}

void Undisturbed::judge_files(const fs::path& folder, Row& row) const {
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        const std::string name = entry.path().lexically_relative(folder).string();
        if (names_before_.contains(name) || is_unfinished(name) || entry.is_directory() ||
            name == work_.makes)
            continue;
        if (name.find(".before-v") != std::string::npos) {
            row.must(contents(entry.path()) == contents(furnished_ / work_.project),
                     name + " isn't the original");
            continue;
        }
        const fs::path whole = finished_ / name;
        row.must(fs::exists(whole) && same_file(entry.path(), whole), name + " isn't whole");
    }
}

std::size_t Undisturbed::judge_project(const fs::path& file, Row& row) const {
    try {
        Project project = Project::open(file);
        for (const Damage& damage : project.check())
            row.lost(damage.what);
        const std::string now = state_of(project);
        const auto state = std::ranges::find(states_, now);
        row.must(state != states_.end(), "the project is neither as before an edit nor as after it");
        // All edits back and forth again.
        std::size_t undone = 0;
        for (; project.undo(); ++undone) {
        }
        for (std::size_t i = 0; i < undone; ++i)
            row.must(project.redo().has_value(), "an edit can't be done again");
        row.must(state_of(project) == now, "undone and done again, the project isn't the same");
        return static_cast<std::size_t>(state - states_.begin());
    } catch (const Error& error) {
        row.lost(std::string("the project: ") + error.what());
        return 0;
    }
}

bool Undisturbed::judge_made(const fs::path& file, Row& row) const {
    if (!fs::exists(file)) return false;
    try {
        const Project made = Project::open(file, Access::read);
        for (const Damage& damage : made.check())
            row.lost(damage.what);
        row.must(contents(file) == end_, "what was made isn't whole");
    } catch (const Error& error) {
        row.lost(std::string("what was made: ") + error.what());
    }
    return true;
}

void Undisturbed::judge_again(const fs::path& folder, bool begun, bool finished, Row& row) const {
    if (finished && states_.size() != 1) return; // done is done
    std::vector<std::string> arguments = work_.arguments;
    if (begun && arguments[0] == "add")
        arguments = {"listen", arguments[1], "--performance", "B", "--voice", "alone"};
    const Outcome again = Child(LUFT_PROGRAM, in(folder, arguments)).wait();
    row.must(again.status == 0, "told again, it says: " + again.err);
    if (!work_.project.empty() && states_.size() > 1 && !begun) {
        const Project project = Project::open(folder / work_.project, Access::read);
        row.must(state_of(project) == states_.back(), "done again, it came to something else");
    }
    for (const std::string& name : finished_.names())
        if (!names_before_.contains(name) && !fs::is_directory(finished_ / name) &&
            name.find(".before-v") == std::string::npos)
            row.must(fs::exists(folder / name) && same_file(folder / name, finished_ / name),
                     name + " isn't whole after the second attempt");
}

} // namespace faults
