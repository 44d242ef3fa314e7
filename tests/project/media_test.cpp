// Recordings: linked, moved, changed and carried. Fingerprints against coreutils' sha256sum.
#include "desk.h"
#include "tools/programs.h"

#include <array>
#include <cstring>
#include <thread>

using namespace desk;

namespace {

/// What an independent program says of the file.
std::string sha256sum(const fs::path& file) {
    return run("sha256sum " + quoted(file)).substr(0, 64);
}

std::string all_of(ByteSource& bytes, std::size_t step) {
    std::string all;
    std::vector<std::byte> part(step);
    while (const std::size_t n = bytes.read_at(static_cast<std::int64_t>(all.size()), part))
        all.append(reinterpret_cast<const char*>(part.data()), n);
    return all;
}

} // namespace

TEST_CASE("a linked recording has a relative path, its size and the fingerprint that sha256sum gives") {
    Sample s;
    fs::create_directories(s.folder / "takes/one");
    write_all(s.folder / "takes/one/t a k e.wav", noise(123457));
    Performance details;
    details.label = "T";
    s.project.add_performance(s.folder / "takes/one/t a k e.wav", false, details);
    const Performance p = s.project.performance("T");
    CHECK(p.media.path == "takes/one/t a k e.wav");
    CHECK(p.media.size == 123457);
    CHECK(p.media.fingerprint == sha256sum(s.folder / "takes/one/t a k e.wav"));
    CHECK_FALSE(p.media.carried);
    CHECK(all_of(*s.project.media(p, true), 1000) == noise(123457));
}

TEST_CASE("a recording outside the project's folder is linked by way of '..'") {
    Folder folder;
    fs::create_directories(folder / "projects/deep");
    write_all(folder / "x.wav", noise(100));
    Project project = Project::create(folder / "projects/deep/p.luft", {"T", "", "", "", ""});
    project.add_performance(folder / "x.wav", false, {});
    CHECK(project.performance("").media.path == "../../x.wav");
    CHECK(project.media(project.performance(""))->size() == 100);
    // The whole tree may move.
    project = Project::create(folder / "other.luft", {"T", "", "", "", ""});
    fs::create_directories(folder / "new");
    fs::rename(folder / "projects", folder / "new/projects");
    fs::rename(folder / "x.wav", folder / "new/x.wav");
    project = Project::open(folder / "new/projects/deep/p.luft");
    CHECK(project.media(project.performance(""))->size() == 100);
}

TEST_CASE("a link holds when the project's folder is reached through a symbolic link") {
    Folder folder;
    fs::create_directories(folder / "real/inside");
    fs::create_directory_symlink(folder / "real/inside", folder / "short");
    write_all(folder / "x.wav", noise(100));
    Project project = Project::create(folder / "short/p.luft", {"T", "", "", "", ""});
    project.add_performance(folder / "x.wav", false, {});
    CHECK(project.media(project.performance(""), true)->size() == 100);
    project = Project::open(folder / "real/inside/p.luft");
    CHECK(project.media(project.performance(""), true)->size() == 100);
}

TEST_CASE("a moved recording is found by its contents in the project's folder and in the folders to search") {
    Sample s;
    const Performance p = s.project.performance("A");
    const std::string bytes = read_all(s.folder / "a.wav");
    fs::create_directories(s.folder / "sub/sub");
    write_all(s.folder / "same-size.wav", noise(bytes.size(), 99)); // a decoy
    fs::rename(s.folder / "a.wav", s.folder / "sub/sub/renamed.wav");
    CHECK(all_of(*s.project.media(p), 4096) == bytes);

    Folder elsewhere;
    fs::rename(s.folder / "sub/sub/renamed.wav", elsewhere / "far.wav");
    CHECK(fault_of([&] { (void)s.project.media(p); }) == Fault::not_found);
    CHECK(all_of(*s.project.media(p, false, {elsewhere.path()}), 4096) == bytes);
    CHECK(all_of(*s.project.media(p, false, {elsewhere / "far.wav"}), 4096) == bytes);

    s.project.relink(p.id, elsewhere / "far.wav");
    CHECK(all_of(*s.project.media(s.project.performance("A"), true), 4096) == bytes);
}

TEST_CASE("a changed recording is refused: another size at once, the same size when verified") {
    Sample s;
    const Performance p = s.project.performance("A");
    const std::string bytes = read_all(s.folder / "a.wav");
    std::string changed = bytes;
    changed[1234] ^= 1;
    write_all(s.folder / "a.wav", changed);
    CHECK(fault_of([&] { (void)s.project.media(p, true); }) == Fault::changed);
    CHECK(s.project.media(p)->size() == 5000); // by size alone it can't be told
    write_all(s.folder / "a.wav", bytes + "x");
    CHECK(fault_of([&] { (void)s.project.media(p); }) == Fault::changed);
    CHECK(fault_of([&] { s.project.relink(p.id, s.folder / "a.wav"); }) == Fault::changed);
    // The original elsewhere beats the changed one in its place.
    write_all(s.folder / "original.wav", bytes);
    CHECK(all_of(*s.project.media(p), 100) == bytes);
    CHECK(all_of(*s.project.media(p, true), 100) == bytes);
}

TEST_CASE("a carried recording travels in the project, byte for byte, however it is read") {
    Sample s;
    const std::string bytes = noise((3U << 20) + 777); // three whole chunks and a part
    write_all(s.folder / "big.mp4", bytes);
    const std::string sum = sha256sum(s.folder / "big.mp4");
    Performance details;
    details.label = "big";
    s.project.add_performance(s.folder / "big.mp4", true, details);
    fs::remove(s.folder / "big.mp4");
    Folder other;
    { const Project closed = std::move(s.project); }
    fs::copy_file(s.file, other / "copy.luft");
    const Project p = Project::open(other / "copy.luft", Access::read);
    const Performance big = p.performance("big");
    CHECK(big.media.carried);
    CHECK(big.media.path == "big.mp4");
    CHECK(big.media.fingerprint == sum);
    const auto source = p.media(big, true);
    CHECK(source->size() == static_cast<std::int64_t>(bytes.size()));
    CHECK(source->name() == "big.mp4");
    CHECK((all_of(*source, 70001) == bytes));
    CHECK((all_of(*source, 2U << 20) == bytes));
    std::array<std::byte, 10> part{};
    CHECK(source->read_at((1 << 20) - 5, part) == 10); // over a border of chunks
    CHECK(std::memcmp(part.data(), bytes.data() + (1 << 20) - 5, 10) == 0);
    CHECK(source->read_at(static_cast<std::int64_t>(bytes.size()) - 3, part) == 3);
    CHECK(source->read_at(static_cast<std::int64_t>(bytes.size()), part) == 0);
    CHECK(source->read_at(1LL << 40, part) == 0);
    CHECK(source->read_at(-1, part) == 0);
    CHECK(p.check().empty());
}

TEST_CASE("carried bytes outlive the project and are read in another thread while it is edited") {
    Sample s;
    s.add("b.wav", "B", true);
    auto source = s.project.media(s.project.performance("B"));
    std::string seen;
    std::thread reader([&] {
        for (int i = 0; i < 50; ++i)
            seen = all_of(*source, 100);
    });
    for (int i = 0; i < 20; ++i)
        s.project.set_piece({"T" + std::to_string(i), "", "", "", ""});
    reader.join();
    CHECK(seen == read_all(s.folder / "b.wav"));
    { const Project closed = std::move(s.project); }
    CHECK(all_of(*source, 333) == read_all(s.folder / "b.wav"));
}

TEST_CASE("carrying reports how far it is, and leaves nothing behind when told to stop") {
    Sample s;
    write_all(s.folder / "big.wav", noise(5U << 20));
    double last = 0;
    int steps = 0;
    const Progress watch([&](double done, std::string_view) {
        CHECK(done >= last);
        CHECK(done <= 1);
        last = done;
        ++steps;
    });
    s.project.add_performance(s.folder / "big.wav", true, {}, watch);
    CHECK(steps >= 10);
    CHECK(last == Approx(1));

    std::stop_source stop;
    const Progress stopped(
        [&](double done, std::string_view) {
            if (done > 0.3) stop.request_stop();
        },
        stop.get_token());
    const auto size = fs::file_size(s.file);
    CHECK_THROWS_AS(s.project.add_performance(s.folder / "big.wav", true, {}, stopped), Stopped);
    CHECK(s.project.performances().size() == 2);
    CHECK(fs::file_size(s.file) == size);
    CHECK(s.project.check().empty());
    s.project.set_piece({"still works", "", "", "", ""});
}

TEST_CASE("performances get the first free letter as label, and labels are unique short names") {
    Sample s;
    CHECK(s.project.performance(s.project.performances().back().label).label == "A");
    s.add("b.wav", "");
    s.add("c.wav", "");
    s.project.remove_performance(s.project.performance("B").id);
    s.add("d.wav", "");
    std::string labels;
    for (const Performance& p : s.project.performances())
        labels += p.label;
    CHECK(labels == "ACB");
    const auto bad = [&](const std::string& label) {
        CHECK(fault_of([&] { s.add("e.wav", label); }) == Fault::bad_request);
    };
    bad("A");
    bad(" ");
    bad("two\nlines");
    CHECK(fault_of([&] { (void)s.project.performance("Z"); }) == Fault::not_found);
    CHECK(fault_of([&] { (void)s.project.performance(""); }) == Fault::bad_request);
}

TEST_CASE("what is noted about a performance comes back, and can be changed") {
    Sample s;
    Performance p = s.project.performance("");
    CHECK(p.performer == "Mara Invented");
    CHECK(p.source == "own recording");
    CHECK(p.permission == "by the singer, in writing");
    CHECK(p.facts.duration == Seconds(3));
    CHECK(p.facts.sample_rate_hz == 44100);
    CHECK(p.facts.channels == 2);
    CHECK(p.facts.has_video);
    CHECK(p.facts.frame_rate_num == 30000);
    CHECK(p.facts.frame_rate_den == 1001);
    s.project.set_performance_notes(p.id, "x", "y", "z");
    p = s.project.performance("A");
    CHECK(p.performer + p.source + p.permission == "xyz");
}

TEST_CASE("a recording that can't be added is refused in words, and nothing is stored") {
    Sample s;
    write_all(s.folder / "empty.wav", "");
    write_all(s.folder / "bad\xFFname.wav", "abc");
    CHECK(fault_of([&] { s.project.add_performance(s.folder / "none.wav", false, {}); }) == Fault::not_found);
    CHECK(fault_of([&] { s.project.add_performance(s.folder.path(), false, {}); }) == Fault::unreadable);
    CHECK(fault_of([&] { s.project.add_performance(s.folder / "empty.wav", true, {}); }) ==
          Fault::unreadable);
    CHECK(fault_of([&] { s.project.add_performance(s.folder / "bad\xFFname.wav", false, {}); }) ==
          Fault::bad_request);
    CHECK(s.project.performances().size() == 1);
    const PerformanceId carried = s.project.add_performance(s.folder / "bad\xFFname.wav", true, {});
    CHECK(s.project.performances()[1].id == carried);
    CHECK(s.project.performances()[1].media.path == "bad\xEF\xBF\xBDname.wav");
    CHECK(fault_of([&] { s.project.relink(carried, s.folder / "a.wav"); }) == Fault::bad_request);
}
