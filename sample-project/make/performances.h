// The two performances: who sings, how, and what was put in on purpose.
#pragma once

#include "base/rational.h"
#include "make/piece.h"
#include "singer/room.h"
#include "singer/voices.h"

#include <string>

namespace luft::sample {

struct Colour {
    double red = 0, green = 0, blue = 0; ///< 0 to 1
};

/// How the singer looks in the drawing.
struct Looks {
    Colour sky_high, sky_low, coat, skin, hair;
    bool long_hair = false;
};

struct Performance {
    std::string name; ///< of its files
    std::string performer;
    std::string ending; ///< of the movie file: mp4 or mkv
    Frame frame;
    singer::Song song;
    singer::Singer singer;
    singer::Room room;
    singer::BandStyle band;
    Decibels voice_over_band{8};
    Rational frame_rate{25};
    Looks looks;
};

/// Orrin Vasslow, tenor, in A major at 84 beats a minute, with a plucked string instrument.
Performance first_performance();

/// Pella Marnik, alto, in C major at 96 beats a minute, with keyboard and soft drums.
Performance second_performance();

} // namespace luft::sample
