// The practice handout, checked by libxml2's xmllint.
#include "export/handout.h"
#include "export/page_file.h"
#include "profile/demo_source.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

/// A profile with one drill whose texts try to break out.
profile::Profile one_drill() {
    profile::Profile p;
    p.piece = "Harbour <Lamps>";
    p.performer = "Mara & Co";
    p.drills = {{.key = "own",
                 .title = "Hiss & <b>tone</b>",
                 .aim = "שלום: it brings \"air\" and tone together.",
                 .steps = {"=1+1 hiss", "Then\nsing"},
                 .caution = "Stop when it <scratches>.",
                 .trains = {},
                 .own = true}};
    profile::Finding f;
    f.drill = "own";
    for (int i = 0; i < 5; ++i)
        f.examples.push_back({{Seconds(10 * i + 1), Seconds(10 * i + 3)}, "breathy <onset>"});
    p.practise = {f};
    f.drill = "another";
    p.practise.push_back(f);
    return p;
}

} // namespace

TEST_CASE("the handout has each drill with aim, steps in order, caution and where to hear it") {
    const PageFile page(handout(one_drill(), {}));
    CHECK(page.count("section", "drill") == 1);
    CHECK(page.asked("string(//*[local-name()='h2']/*[local-name()='bdi'])") == "Hiss & <b>tone</b>");
    CHECK(page.asked("string(//*[@class='aim'])") == "שלום: it brings \"air\" and tone together.");
    CHECK(page.asked("string(//*[local-name()='ol']/*[local-name()='li'][1])") == "=1+1 hiss");
    CHECK(page.asked("string(//*[local-name()='ol']/*[local-name()='li'][2])") == "Then\nsing");
    CHECK(page.asked("string(//*[@class='stop'])") == "Take care: Stop when it <scratches>.");
    CHECK(page.asked("count(//*[@class='hear']//*[local-name()='li'])") == "3"); // not all five
    CHECK(page.asked("string((//*[@class='hear']//*[local-name()='li'])[1])") ==
          "0:01.0 to 0:03.0: breathy <onset>");
}

TEST_CASE("the handout tells students to stop when it hurts and when to see a doctor, before any drill") {
    for (const auto& profile : {one_drill(), profile::Profile{}}) {
        const std::string html = handout(profile, {});
        const auto doctor = html.find("belongs to a doctor");
        REQUIRE(doctor != std::string::npos);
        CHECK(doctor < html.find("<section"));
        const PageFile page(html);
        CHECK(page.asked("count(//*[local-name()='script'])") == "0");
    }
}

TEST_CASE(
    "the handout of a whole profile has all of its drills, and every drill is heard and seen somewhere") {
    const auto source = profile::demo::source();
    const auto profile = profile::make_profile(source);
    REQUIRE(!profile.drills.empty());
    const PageFile page(handout(profile, source));
    for (std::size_t i = 1; i <= profile.drills.size(); ++i)
        CHECK(std::stoi(page.asked("count((//*[@class='hear'])[" + std::to_string(i) +
                                   "]//*[@class='phrase']/*[local-name()='svg'])")) >= 1);
    CHECK(page.count("section", "drill") == static_cast<int>(profile.drills.size()));
    CHECK(page.count("div", "hear") == static_cast<int>(profile.drills.size()));
}

TEST_CASE("no picture of the handout uses another one's letters, and each says what it shows") {
    const auto source = profile::demo::source();
    const PageFile page(handout(profile::make_profile(source), source));
    // Python's own XML parser: every name once, every use of one within the same picture.
    test::write_all(page.folder / "names.py",
                    "import re, sys, xml.etree.ElementTree as tree\n"
                    "svgs = [e for e in tree.parse(sys.argv[1]).iter() if e.tag.endswith('}svg')]\n"
                    "seen = set()\n"
                    "for svg in svgs:\n"
                    "    ids = [e.get('id') for e in svg.iter() if e.get('id')]\n"
                    "    assert len(ids) == len(set(ids)) and not seen & set(ids)\n"
                    "    seen |= set(ids)\n"
                    "    uses = [v for e in svg.iter() for v in e.attrib.values()]\n"
                    "    uses = [u for v in uses for u in re.findall(r'^#(.*)|url\\(#(.*?)\\)', v)]\n"
                    "    uses = {a or b for a, b in uses}\n"
                    "    assert uses and uses <= set(ids), uses - set(ids)\n"
                    "    assert svg.get('aria-label').startswith('The sung line at ')\n"
                    "    assert svg.get('width') is None and svg.get('viewBox')\n"
                    "print(len(svgs))\n");
    CHECK(std::stoi(test::run("python3 " + test::quoted(page.folder / "names.py") + " " +
                              test::quoted(page.file))) > 3);
}
