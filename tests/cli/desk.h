// A project with one sung performance in it, as most tests of the verbs need it.
#pragma once

#include "cli/program.h"
#include "scenes/sung.h"
#include "tools/folder.h"

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace luft::cli::test {

/// A folder with sung.wav and a.luft, which holds it as performance A, listened to.
class Desk {
  public:
    Desk();

    /// Runs `luftpause VERB a.luft ARGUMENTS…`, which must succeed; what it printed.
    std::string operator()(const std::string& verb, std::vector<std::string> arguments = {}) const;
    /// The same with --json, parsed.
    [[nodiscard]] nlohmann::json json(const std::string& verb, std::vector<std::string> arguments = {}) const;
    /// The same where it needn't succeed.
    [[nodiscard]] Outcome tried(const std::string& verb, std::vector<std::string> arguments = {}) const;

    /// Marks of a kind, in order of time.
    [[nodiscard]] nlohmann::json marks(const std::string& kind) const;
    [[nodiscard]] nlohmann::json moments() const { return json("moment", {"list"}); }

    luft::test::Folder folder;
    singer::Truth truth;
    std::string added; ///< what `add` said
};

/// An id as an argument.
std::string id_of(const nlohmann::json& row);

} // namespace luft::cli::test
