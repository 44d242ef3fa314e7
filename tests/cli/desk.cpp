#include "cli/desk.h"

#include <catch2/catch.hpp>

namespace luft::cli::test {

Desk::Desk() : truth(luft::scenes::write_sung(luft::scenes::three_lines(), folder / "sung.wav")) {
    done({"new", folder / "a.luft", "--title", "Three lines", "--writer", "Nobody", "--key", "E minor"});
    added = done({"add", folder / "a.luft", folder / "sung.wav", "--label", "A", "--performer", "Tam Orlin"});
}

std::string Desk::operator()(const std::string& verb, std::vector<std::string> arguments) const {
    arguments.insert(arguments.begin(), {verb, folder / "a.luft"});
    return done(arguments);
}

nlohmann::json Desk::json(const std::string& verb, std::vector<std::string> arguments) const {
    arguments.push_back("--json");
    return nlohmann::json::parse((*this)(verb, arguments));
}

Outcome Desk::tried(const std::string& verb, std::vector<std::string> arguments) const {
    arguments.insert(arguments.begin(), {verb, folder / "a.luft"});
    return luftpause(arguments);
}

nlohmann::json Desk::marks(const std::string& kind) const {
    return json("marks", {"--kind", kind})["marks"];
}

std::string id_of(const nlohmann::json& row) {
    return std::to_string(row.at("id").get<std::int64_t>());
}

} // namespace luft::cli::test
