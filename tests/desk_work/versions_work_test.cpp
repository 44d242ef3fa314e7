// The work on two performances: asked for, waited for, stopped, done without.
#include "media/media.h"
#include "two.h"

#include <catch2/catch.hpp>

#include <functional>

using namespace luft;
using namespace luft::desk;
using sheet::Which;

TEST_CASE("A recording that opens but can't be read to its end isn't needed either") {
    using namespace std::string_literals;
    // A wave file's header that announces samples, of which there are none.
    const std::string header = "RIFF\x24\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00"
                               "\x44\xac\x00\x00\x88\x58\x01\x00\x02\x00\x10\x00"
                               "data\x00\x00\x00\x00"s;
    Two two;
    const auto first = two.add("C", false, header), second = two.add("D", true, header);
    const auto& project = two.session.project();
    const auto sound = media::open_sound(project.media(project.performance("C")));
    REQUIRE_THROWS_AS(sound->read(), Error);
    const auto matched = match(project, first, second);
    CHECK(matched->note.find("by their singing alone") != std::string::npos);
    CHECK(matched->comparison.alignment.semitones == Two::kHigher);
    // What isn't the recordings' fault is said as it is.
    two.session.edit([&](project::Project& p) { p.set_pins(first, second, {{Seconds(1), Seconds(50)}}); });
    CHECK_THROWS_AS(match(project, first, second), Error);
}

TEST_CASE("The two are compared anew when a recording goes, and when it is found elsewhere") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    std::filesystem::create_directory(two.folder / "moved");
    std::filesystem::rename(two.folder / "A.wav", two.folder / "moved" / "A.wav");
    CHECK(do_wanted(versions, two.session));
    CHECK_FALSE(versions.wanted());
    two.session.edit([&](project::Project& p) { p.relink(two.a, two.folder / "moved" / "A.wav"); });
    CHECK(versions.wanted());
}

TEST_CASE("Work that is asked for is waited for until it comes, whatever else comes before") {
    Two two;
    Versions versions(two.session);
    const auto first = *versions.wanted();
    CHECK(versions.lacking() == "The two are still being compared.");
    const auto third = two.add("C", true);
    two.session.reload();
    versions.choose(Which::b, third);
    const auto second = *versions.wanted();
    versions.take(match(two.session.project(), first.a, first.b));
    CHECK(versions.waits());
    CHECK_FALSE(versions.wanted()); // it is on its way
    versions.not_done(first, "Stopped.");
    CHECK(versions.why_not().empty()); // that was of other two
    versions.not_done(second, "Stopped.");
    CHECK_FALSE(versions.waits());
    CHECK(versions.why_not() == "Stopped.");
    CHECK(versions.lacking() == "The two weren't compared. Stopped. F4 does it again.");
    CHECK_FALSE(versions.wanted());
    CHECK(versions.wanted(true));
    CHECK(versions.why_not().empty());
    versions.take(match(two.session.project(), second.a, second.b));
    CHECK(versions.lacking().empty());
    CHECK_FALSE(versions.waits());
}

TEST_CASE("What is shown says that it is out of date, and why it isn't made anew") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    const std::string without = versions.note();
    CHECK(without.find("by their singing alone") != std::string::npos);
    CHECK(without.find("Changed") == std::string::npos);
    const auto id = two.session.source().marks.front().id;
    two.session.edit([&](project::Project& p) { p.set_mark_state(id, project::MarkState::dropped); });
    const auto task = *versions.wanted();
    CHECK(versions.note() == "Changed since: being compared anew. " + without);
    versions.not_done(task, "Stopped.");
    CHECK(versions.note() == "Changed since, and not compared anew. Stopped. F4 does it again. " + without);
    versions.take(match(two.session.project(), task.a, task.b));
    CHECK(versions.note() == without);
}

TEST_CASE("Comparisons that wait are dropped, and nothing else that waits") {
    std::deque<Job::Task> waiting;
    waiting.emplace_back(Job::Match{project::PerformanceId{1}, project::PerformanceId{2}});
    waiting.emplace_back(Job::Again{project::PerformanceId{3}});
    waiting.emplace_back(Job::Match{project::PerformanceId{4}, project::PerformanceId{5}});
    const auto dropped = drop_comparisons(waiting);
    REQUIRE(dropped.size() == 2);
    CHECK(dropped[1].b == project::PerformanceId{5});
    REQUIRE(waiting.size() == 1);
    CHECK(std::holds_alternative<Job::Again>(waiting.front()));
}

TEST_CASE("With one performance whatever needs two says so") {
    Two two;
    Versions versions(two.session);
    two.session.edit([&](project::Project& p) { p.remove_performance(two.b); });
    CHECK(versions.lacking() == "There is only one performance of this piece.");
    const std::function<void()> all[] = {[&] { (void)versions.turn(Which::a); },
                                         [&] { (void)versions.both(); }, [&] { (void)versions.in_turn(); },
                                         [&] { versions.swap(); }};
    for (const auto& one : all)
        try {
            one();
            FAIL("nothing was said");
        } catch (const Error& error) {
            CHECK(error.fault() == Fault::bad_request);
            CHECK(error.what() == versions.lacking());
        }
}

TEST_CASE("Where a recording can't be read the singing alone is compared, and that is said") {
    Two two;
    const auto matched = match(two.session.project(), two.a, two.b);
    CHECK(matched->note.find("by their singing alone") != std::string::npos);
    CHECK(matched->comparison.alignment.semitones == Two::kHigher);
    CHECK_FALSE(matched->comparison.side_a.harmony);
}
