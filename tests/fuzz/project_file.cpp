// Any bytes as a project file: opened, checked, read, edited, and rescued.
#include "fuzz/scratch.h"
#include "fuzz/target.h"
#include "project/project.h"
#include "project/rescue.h"

using namespace luft;
using namespace luft::project;

namespace {

void read_all_of(const Project& p) {
    for (const Performance& x : p.performances()) {
        (void)p.marks(x.id, true);
        (void)p.moments(x.id, true);
        (void)p.script(x.id);
        (void)p.sung_words(x.id);
        (void)p.listening(x.id);
        (void)p.curves(x.id);
        if (x.media.carried) {
            std::vector<std::byte> some(64);
            (void)p.media(x)->read_at(0, some);
        }
    }
    (void)p.vocabulary();
}

/// Faults in words are what any bytes may end in.
template <class Call>
bool goes(Call call) {
    try {
        call();
        return true;
    } catch (const Error& e) {
        fuzz::demand(*e.what() != '\0', "a fault is told in words");
        return false;
    }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const fuzz::Scratch scratch;
    scratch.clear();
    const auto file = scratch / "any.luft", fresh = scratch / "fresh.luft";
    fuzz::write_bytes(file, fuzz::text_of(data, size));

    if (goes([&] { rescue(file, fresh); })) {
        const Project saved = Project::open(fresh);
        fuzz::demand(saved.check().empty(), "what was rescued is sound");
        read_all_of(saved);
    }
    goes([&] {
        Project p = Project::open(file);
        goes([&] { (void)p.check(); });
        goes([&] { read_all_of(p); });
        goes([&] { p.set_piece({"after", "", "", "", ""}); });
        goes([&] {
            while (p.undo()) {
            }
        });
        goes([&] {
            while (p.redo()) {
            }
        });
    });
    return 0;
}
