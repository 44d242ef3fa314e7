// How the enumerations stand in the project file: as words.
#pragma once

#include "base/error.h"
#include "project/model.h"

#include <array>
#include <string>
#include <string_view>

namespace luft::project {

/// The words of an enumeration, in the order of its values.
template <class E>
inline constexpr std::array<std::string_view, 0> kWords{};

template <>
inline constexpr std::array<std::string_view, 3> kWords<MarkState>{"proposed", "kept", "dropped"};
template <>
inline constexpr std::array<std::string_view, 2> kWords<Origin>{"detected", "coach"};
template <>
inline constexpr std::array<std::string_view, 4> kWords<MarkKind>{"note", "breath", "phrase", "switch"};
template <>
inline constexpr std::array<std::string_view, 3> kWords<Verdict>{"strength", "watch", "explain"};
template <>
inline constexpr std::array<std::string_view, 4> kWords<ScriptItemKind>{"opening", "stop", "aside",
                                                                        "closing"};
template <>
inline constexpr std::array<std::string_view, 2> kWords<voice::Setting>{"alone", "accompanied"};
template <>
inline constexpr std::array<std::string_view, 2> kWords<marks::Register>{"chest", "head"};
template <>
inline constexpr std::array<std::string_view, 3> kWords<marks::OnsetKind>{"glottal", "breathy", "balanced"};
template <>
inline constexpr std::array<std::string_view, 3> kWords<marks::OffsetKind>{"clean", "breathy", "trailing"};
template <>
inline constexpr std::array<std::string_view, 2> kWords<marks::BreathEvidence>{"heard", "inferred"};
template <>
inline constexpr std::array<std::string_view, 5> kWords<marks::LevelShape>{"steady", "growing", "fading",
                                                                           "swelling", "fluctuating"};
template <>
inline constexpr std::array<std::string_view, 6> kWords<marks::Dynamic>{"pp", "p", "mp", "mf", "f", "ff"};
template <>
inline constexpr std::array<std::string_view, 3> kWords<vocabulary::Basis>{"measured", "hint", "coach"};
template <>
inline constexpr std::array<std::string_view, 3> kWords<vocabulary::Leaning>{"strength", "watch", "neutral"};

template <class E>
std::string_view word(E value) {
    return kWords<E>.at(static_cast<std::size_t>(value));
}

/// Throws Error(unreadable) for a word that isn't one of them.
template <class E>
E read_word(std::string_view text) {
    for (std::size_t i = 0; i < kWords<E>.size(); ++i)
        if (kWords<E>[i] == text) return static_cast<E>(i);
    throw Error(Fault::unreadable,
                "The project file holds the word '" + std::string(text) + "' where it makes no sense.",
                "Run a check to see what else is damaged.");
}

} // namespace luft::project
