// A short sung file whose breaths and phrases are known.
#pragma once

#include "singer/singer.h"

#include <filesystem>

namespace luft::scenes {

/// Three lines of four notes with heard breaths between them, some twelve seconds, alone. `times` repeats it.
singer::Song three_lines(int times = 1);

/// Sings it as a tenor and writes it as a 16-bit mono WAV file of 44.1 kHz; what it truly holds.
singer::Truth write_sung(const singer::Song& song, const std::filesystem::path& file);

} // namespace luft::scenes
