// Sizes that layout and drawing share, in units of the canvas; chosen by eye for screen and paper.
#pragma once

#include "sheet/canvas.h"

namespace luft::sheet {

inline constexpr double kGutter = 56;   ///< times and note names
inline constexpr double kRightPad = 22; ///< room for a breath after the longest phrase
inline constexpr double kSheetTop = 10;
inline constexpr double kAbove = 30;     ///< phrase line, breaths and switches
inline constexpr double kSignAbove = 19; ///< from the staff up to the middle of a breath or a switch
inline constexpr double kBelow = 16;
inline constexpr double kWordsLine = 16;   ///< what a row grows by for the words under it
inline constexpr double kWordsBelow = 19;  ///< from the staff to their base line
inline constexpr double kWordSpace = 5;    ///< least between two words
inline constexpr double kHyphenRoom = 9;   ///< least between two syllables for the hyphen to be drawn
inline constexpr double kHyphenEvery = 70; ///< in a wider gap there are several
inline constexpr Type kSungWord{13.5, false, false};
inline constexpr double kRestHeight = 18;
inline constexpr double kLane = 17; ///< one level of brackets
inline constexpr int kMostLanes = 4;
inline constexpr double kLeastBracket = 10;
inline constexpr double kLeastSemitones = 7;

inline constexpr double kMarginGap = 14; ///< between rows and cards
inline constexpr double kMarginPad = 12;
inline constexpr double kCardPad = 6;
inline constexpr double kCardIndent = 26; ///< for the number
inline constexpr double kLeastCard = 44;  ///< number and verdict below each other
inline constexpr double kCardGap = 6;
inline constexpr int kTitleLines = 2;
inline constexpr int kRemarkLines = 4;
inline constexpr int kEvidenceLines = 3;
inline constexpr Type kCardTitle{12.5, true, false};
inline constexpr Type kCardRemark{12.5, false, false};
inline constexpr Type kCardEvidence{12, false, true};
inline constexpr Type kCardDrill{11.5, false, true};

inline constexpr double kPairGutter = 84;     ///< names, times and note names beside two performances
inline constexpr double kPairHead = 12;       ///< around the words over the first row
inline constexpr double kPairGap = 16;        ///< under a row
inline constexpr double kEmptyPart = 44;      ///< height of a line without counterpart
inline constexpr double kSignLane = 20;       ///< one level of differences
inline constexpr double kSignIndent = 19;     ///< for the number
inline constexpr double kSignSpace = 12;      ///< least between two
inline constexpr double kSameX = 5;           ///< notes this near each other need no tie
inline constexpr double kSameSemitones = 0.5; ///< and this near in pitch
inline constexpr Type kPairHeadType{13, false, false};
inline constexpr Type kSignType{12.5, false, false};

inline constexpr double kThin = 1.8; ///< ribbon of the softest sound
inline constexpr double kThick = 9;  ///< and of the loudest, at 7 units a semitone

} // namespace luft::sheet
