// The forms of sentence that a draft takes in turn. "{c}" stands for a clause, "{n}" for a thing with its
// article.
#pragma once

#include <array>

namespace luft::script::forms {

inline constexpr std::array kStrength = {
    "Listen how {c}.",       "Notice that {c}.", "This works well: {c}.", "Here is something to copy: {c}.",
    "You can hear it: {c}.",
};
inline constexpr std::array kWatch = {
    "Here you can hear that {c}.", "One thing to watch: {c}.", "Mind this place: {c}.",
    "What I would work on: {c}.",  "In this spot {c}.",
};
inline constexpr std::array kExplain = {
    "Notice what happens: {c}.",
    "In this place {c}.",
    "You have just heard it: {c}.",
    "Listen for this: {c}.",
};
inline constexpr std::array kAlso = {
    "At the same time {c}.",
    "Along with that, {c}.",
    "And one more thing: {c}.",
};
inline constexpr std::array kHint = {
    "It sounds as if {c}. Sound alone only hints at that.",
    "The sound hints that {c}.",
    "My guess from the sound is that {c}. A recording can't prove it.",
    "If the sound doesn't mislead us, {c}. Take it as a hint.",
};
inline constexpr std::array kCoach = {
    "As I hear and see it, {c}.",
    "In my view {c}.",
    "My own impression is that {c}.",
    "To my eye and ear {c}.",
};
inline constexpr std::array kAgain = {
    "Here it is once more: {n}.",
    "You have met this before: {n}.",
    "And again {n}.",
};
inline constexpr std::array kAgainHint = {
    "The sound hints at it once more: {n}.",
    "It may be the same again: {n}. It is a hint, no more.",
};
inline constexpr std::array kAgainCoach = {
    "In my view it is the same again: {n}.",
    "I take this for the same thing: {n}.",
};
inline constexpr std::array kMeasured = {
    "Measured: {c}",
    "What the measurement says: {c}",
    "The figures behind it: {c}",
};
inline constexpr std::array kByEar = {
    "No measurement settles this; it is what my ear says.",
    "I go by ear here, not by a measurement.",
    "The measurement stays silent on this one. Trust your own ears, too.",
};
inline constexpr std::array kUnsure = {
    "The measurement is not sure of it, so listen for yourself.",
    "I would not swear to it: the measurement is in doubt here.",
};
inline constexpr std::array kDrill = {
    "If you want to work on this, try the drill {n}: it {c}.",
    "A drill for it is {n}: it {c}.",
    "Practise it with {n}: that drill {c}.",
    "The drill {n} helps here: it {c}.",
};
inline constexpr std::array kDrillStrength = {
    "To get there yourself, practise {n}: it {c}.",
    "The drill {n} leads there: it {c}.",
};
inline constexpr std::array kOwnDrill = {
    "A drill for this is {n}. {c}",
    "Try the drill {n}. {c}",
};
/// Here "{n}" is another performance: a singer's name, or "the performance “B”".
inline constexpr std::array kQuote = {
    "Now listen to {n} in the same place.",
    "Compare it with {n}.",
    "Here is {n} in the same place.",
};
inline constexpr std::array kSlowQuote = {
    "Now listen to {n} in the same place, slowed down.",
    "Compare it with {n}, in slow motion.",
};
inline constexpr std::array kQuoteAndReplay = {
    "Listen first to {n}, and then here again.",
    "Compare for yourself: {n}, and then the same place here once more.",
    "Here is {n} in the same place, and after that what we have just heard.",
};
inline constexpr std::array kSlowQuoteAndReplay = {
    "Listen first to {n}, and then here again, both slowed down.",
    "Compare in slow motion: first {n}, and then the same place here.",
};
inline constexpr std::array kReplay = {
    "Listen once more.",
    "Here it is again.",
    "Let us hear that again.",
};
inline constexpr std::array kSlowReplay = {
    "Here it is again, slowed down.",
    "Listen once more, more slowly.",
    "Now the same again in slow motion.",
};

} // namespace luft::script::forms
