#include "export/mark_words.h"

#include <array>
#include <cstddef>

namespace luft::exports {
namespace {

/// The word at an enumerator's place; the lists below are in the order of the declarations.
template <class Enum, std::size_t N>
std::string_view pick(Enum value, const std::array<std::string_view, N>& words) {
    const auto i = static_cast<std::size_t>(value);
    return i < N ? words[i] : std::string_view{};
}

} // namespace

std::string_view word(marks::Register which) {
    return pick<marks::Register, 2>(which, {"chest", "head"});
}

std::string_view word(marks::OnsetKind kind) {
    return pick<marks::OnsetKind, 3>(kind, {"glottal", "breathy", "balanced"});
}

std::string_view word(marks::OffsetKind kind) {
    return pick<marks::OffsetKind, 3>(kind, {"clean", "breathy", "trailing"});
}

std::string_view word(marks::BreathEvidence evidence) {
    return pick<marks::BreathEvidence, 2>(evidence, {"heard", "inferred"});
}

std::string_view word(marks::LevelShape shape) {
    return pick<marks::LevelShape, 5>(shape, {"steady", "growing", "fading", "swelling", "fluctuating"});
}

std::string_view word(marks::Dynamic mark) {
    return pick<marks::Dynamic, 6>(mark, {"pp", "p", "mp", "mf", "f", "ff"});
}

std::string_view word(voice::Setting setting) {
    return pick<voice::Setting, 2>(setting, {"alone", "accompanied"});
}

std::string_view word(project::MarkKind kind) {
    return pick<project::MarkKind, 4>(kind, {"note", "breath", "phrase", "switch"});
}

std::string_view word(project::MarkState state) {
    return pick<project::MarkState, 3>(state, {"proposed", "kept", "dropped"});
}

std::string_view word(project::Origin origin) {
    return pick<project::Origin, 2>(origin, {"detected", "coach"});
}

} // namespace luft::exports
