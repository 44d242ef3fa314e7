#include "script/timecode.h"

#include "base/error.h"

#include <array>
#include <cstdio>

namespace luft::script {
namespace {

/// How frames are counted at a rate. SMPTE ST 12-1: at 30000/1001 the first two frame numbers of a minute are
/// skipped, at 60000/1001 the first four, but not in each tenth minute.
struct Count {
    std::int64_t per_second = 0; ///< frame numbers a counted second
    std::int64_t skipped = 0;    ///< frame numbers skipped at the start of a minute; 0 = none

    [[nodiscard]] std::int64_t per_minute() const { return 60 * per_second - skipped; }
    [[nodiscard]] std::int64_t per_ten_minutes() const { return 600 * per_second - 9 * skipped; }
    [[nodiscard]] std::int64_t per_day() const { return 144 * per_ten_minutes(); }
};

Count count_at(Rational frame_rate, bool drop_frame) {
    if (frame_rate <= Rational(0)) throw Error(Fault::bad_request, "A frame rate must be above 0.");
    Count c;
    c.per_second = std::max<std::int64_t>(frame_rate.round(), 1);
    if (drop_frame && can_drop_frames(frame_rate)) c.skipped = c.per_second / 15;
    return c;
}

[[noreturn]] void refuse(const std::string& text) {
    throw Error(Fault::bad_request, "'" + text + "' is not timecode at this frame rate.",
                "Write it as HH:MM:SS:FF, or HH:MM:SS;FF where drop-frame counts.");
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

} // namespace

bool can_drop_frames(Rational frame_rate) {
    return frame_rate == Rational(30000, 1001) || frame_rate == Rational(60000, 1001);
}

std::string timecode(std::int64_t frame, Rational frame_rate, bool drop_frame) {
    const Count c = count_at(frame_rate, drop_frame);
    frame = (frame % c.per_day() + c.per_day()) % c.per_day();
    if (c.skipped > 0) { // put the skipped numbers back in, then count as if every number were used
        const std::int64_t tens = frame / c.per_ten_minutes();
        const std::int64_t rest = frame % c.per_ten_minutes();
        const std::int64_t minutes = rest < 60 * c.per_second ? 0 : (rest - c.skipped) / c.per_minute();
        frame += c.skipped * (9 * tens + minutes);
    }
    const std::int64_t second = frame / c.per_second;
    std::array<char, 64> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%02lld:%02lld:%02lld%c%02lld",
                  static_cast<long long>(second / 3600), static_cast<long long>(second / 60 % 60),
                  static_cast<long long>(second % 60), c.skipped > 0 ? ';' : ':',
                  static_cast<long long>(frame % c.per_second));
    return buffer.data();
}

std::int64_t frame_of_timecode(const std::string& text, Rational frame_rate) {
    // HH:MM:SS:FF; rates of 100 and more need three digits for the frames.
    if (text.size() < 11 || text.size() > 12) refuse(text);
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool separator = i == 2 || i == 5 || i == 8;
        if (separator ? !(text[i] == ':' || (i == 8 && text[i] == ';')) : !is_digit(text[i])) refuse(text);
    }
    const bool drop = text[8] == ';';
    if (drop && !can_drop_frames(frame_rate)) refuse(text);
    const Count c = count_at(frame_rate, drop);
    const std::int64_t hour = std::stoi(text.substr(0, 2));
    const std::int64_t minute = std::stoi(text.substr(3, 2));
    const std::int64_t second = std::stoi(text.substr(6, 2));
    const std::int64_t frame = std::stoi(text.substr(9));
    if (hour > 23 || minute > 59 || second > 59 || frame >= c.per_second) refuse(text);
    if (drop && second == 0 && minute % 10 != 0 && frame < c.skipped) refuse(text);
    const std::int64_t minutes = 60 * hour + minute;
    return (60 * minutes + second) * c.per_second + frame - c.skipped * (minutes - minutes / 10);
}

} // namespace luft::script
