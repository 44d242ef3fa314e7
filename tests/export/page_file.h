// A page as a file, asked by libxml2's xmllint.
#pragma once

#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <string>

namespace luft::exports::testing {

/// A page as a file. Fails the test when it isn't well-formed.
struct PageFile {
    explicit PageFile(const std::string& html) {
        test::write_all(file, html);
        test::run("xmllint --nonet --noout " + test::quoted(file));
    }
    /// What an XPath expression gives on the page, without the line end that xmllint adds.
    [[nodiscard]] std::string asked(const std::string& xpath) const {
        std::string said = test::run("xmllint --nonet --xpath \"" + xpath + "\" " + test::quoted(file));
        while (said.ends_with('\n'))
            said.pop_back();
        return said;
    }
    /// How many elements of a name have a class.
    [[nodiscard]] int count(const std::string& tag, const std::string& name) const {
        return std::stoi(asked("count(//*[local-name()='" + tag + "'][contains(concat(' ',@class,' '),' " +
                               name + " ')])"));
    }

    test::Folder folder;
    std::filesystem::path file = folder / "page.html";
};

} // namespace luft::exports::testing
