#include "cli/mark_kind.h"

#include "base/error.h"

namespace luft::cli {
namespace {

using marks::Register;

bool set(marks::Breath& breath, const std::string& word) {
    if (word == "heard")
        breath.evidence_kind = marks::BreathEvidence::heard;
    else if (word == "inferred")
        breath.evidence_kind = marks::BreathEvidence::inferred;
    else if (word == "inside-phrase")
        breath.inside_phrase = true;
    else if (word == "between-phrases")
        breath.inside_phrase = false;
    else
        return false;
    return true;
}

bool set(marks::Phrase&, const std::string&) {
    return false;
}

bool set(marks::Switch& change, const std::string& word) {
    const bool up = word == "chest-to-head";
    if (!up && word != "head-to-chest") return false;
    change.from = up ? Register::chest : Register::head;
    change.to = up ? Register::head : Register::chest;
    return true;
}

/// What the coach says of an onset or an offset is certain.
bool set(marks::Note& note, const std::string& word) {
    constexpr Confidence kCertain{1};
    const auto onset = [&](marks::OnsetKind kind) { note.onset = {kind, kCertain, "set by the coach"}; };
    const auto offset = [&](marks::OffsetKind kind) { note.offset = {kind, kCertain, "set by the coach"}; };
    if (word == "onset:glottal")
        onset(marks::OnsetKind::glottal);
    else if (word == "onset:breathy")
        onset(marks::OnsetKind::breathy);
    else if (word == "onset:balanced")
        onset(marks::OnsetKind::balanced);
    else if (word == "offset:clean")
        offset(marks::OffsetKind::clean);
    else if (word == "offset:breathy")
        offset(marks::OffsetKind::breathy);
    else if (word == "offset:trailing")
        offset(marks::OffsetKind::trailing);
    else if (word == "register:chest")
        note.sung_in = Register::chest;
    else if (word == "register:head")
        note.sung_in = Register::head;
    else
        return false;
    return true;
}

} // namespace

void set_kind(project::Mark& mark, const std::string& word) {
    if (!std::visit([&](auto& what) { return set(what, word); }, mark.what))
        throw Error(Fault::bad_request, "'" + word + "' doesn't fit this mark.",
                    std::string("These do: ") + kKindWords + ".");
}

} // namespace luft::cli
