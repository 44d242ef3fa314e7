#include "compare/difference.h"

namespace luft::compare {

const char* name_of(DifferenceKind kind) {
    switch (kind) {
    case DifferenceKind::key:
        return "key";
    case DifferenceKind::tuning:
        return "tuning";
    case DifferenceKind::tempo:
        return "tempo";
    case DifferenceKind::lowest_note:
        return "lowest note";
    case DifferenceKind::highest_note:
        return "highest note";
    case DifferenceKind::tessitura:
        return "tessitura";
    case DifferenceKind::breath_added:
        return "breath added";
    case DifferenceKind::breath_saved:
        return "breath saved";
    case DifferenceKind::breath_moved:
        return "breath moved";
    case DifferenceKind::phrase_joined:
        return "phrases joined";
    case DifferenceKind::phrase_broken:
        return "phrase broken";
    case DifferenceKind::other_register:
        return "register";
    case DifferenceKind::onset:
        return "onset";
    case DifferenceKind::offset:
        return "offset";
    case DifferenceKind::vibrato:
        return "vibrato";
    case DifferenceKind::vibrato_rate:
        return "vibrato rate";
    case DifferenceKind::vibrato_extent:
        return "vibrato extent";
    case DifferenceKind::note_intonation:
        return "intonation";
    case DifferenceKind::other_note:
        return "another note";
    case DifferenceKind::phrase_intonation:
        return "phrase intonation";
    case DifferenceKind::scoop:
        return "scoop";
    case DifferenceKind::drift:
        return "drift";
    case DifferenceKind::crack:
        return "crack";
    case DifferenceKind::vowel:
        return "vowel";
    case DifferenceKind::closure:
        return "closure";
    case DifferenceKind::ring:
        return "ring";
    case DifferenceKind::level_range:
        return "range of level";
    case DifferenceKind::level_shape:
        return "phrase level";
    case DifferenceKind::note_level:
        return "note level";
    case DifferenceKind::phrase_tempo:
        return "phrase tempo";
    case DifferenceKind::added_notes:
        return "added notes";
    }
    return "";
}

const char* name_of(Unit unit) {
    switch (unit) {
    case Unit::times:
        return "";
    case Unit::semitones:
        return "semitones";
    case Unit::cents:
        return "cents";
    case Unit::hertz:
        return "Hz";
    case Unit::seconds:
        return "s";
    case Unit::decibels:
        return "dB";
    case Unit::percent:
        return "%";
    }
    return "";
}

} // namespace luft::compare
