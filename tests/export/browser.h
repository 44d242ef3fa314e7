// A page in a headless browser, without network: what its script has left in it.
#pragma once

#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <string>

namespace luft::exports::testing {

/// Opens a page of the folder in Chromium, lets it load, and gives the words of its element with the id
/// "said". The page may read the files beside it.
inline std::string said_by(const test::Folder& folder, const std::string& page) {
    test::write_all(folder / "page.html", page);
    // Its profile lies in the folder, so that nothing of the user's own is read or left; as root it has no
    // sandbox.
    const std::string dom = test::run(
        "timeout 120 chromium --headless --no-sandbox --disable-gpu --no-first-run --disable-extensions "
        "--disable-background-networking --disable-component-update --user-data-dir=" +
        test::quoted(folder / "browser") +
        " --allow-file-access-from-files --virtual-time-budget=20000 --dump-dom " +
        test::quoted("file://" + (folder / "page.html").string()) + " 2>/dev/null");
    const auto start = dom.find("id=\"said\">");
    REQUIRE(start != std::string::npos);
    const auto from = start + 10;
    return dom.substr(from, dom.find("</pre>", from) - from);
}

} // namespace luft::exports::testing
