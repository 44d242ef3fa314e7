#include "bench/midi_file.h"

#include "base/write_file.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>

namespace luft::bench {
namespace {

constexpr int kTicksPerBeat = 960; // at 120 beats a minute
constexpr double kTicksPerSecond = 2.0 * kTicksPerBeat;

struct Event {
    std::int64_t tick = 0;
    int order = 0; ///< at the same tick: set-up, then ends, then starts
    std::string bytes;
};

std::string bytes_of(std::initializer_list<int> values) {
    std::string out;
    for (const int v : values)
        out += static_cast<char>(v);
    return out;
}

std::string big_endian(std::uint32_t value, int bytes) {
    std::string out;
    for (int k = bytes - 1; k >= 0; --k)
        out += static_cast<char>(value >> (8 * k) & 0xFF);
    return out;
}

/// Seven bits a byte, the top bit set in all but the last.
std::string variable_length(std::int64_t value) {
    std::string out(1, static_cast<char>(value & 0x7F));
    while (value >>= 7)
        out.insert(out.begin(), static_cast<char>((value & 0x7F) | 0x80));
    return out;
}

void set_up(std::vector<Event>& to, const MidiChannel& c) {
    // The wheel's usual range is two semitones each way in 14 bits.
    const int bend = std::clamp(static_cast<int>(std::lround(8192 + c.bend.value() / 200 * 8192)), 0, 16383);
    const int pan = std::clamp(static_cast<int>(std::lround(64 + 63 * c.pan)), 0, 127);
    to.push_back({0, 0, bytes_of({0xC0 | c.channel, c.program})});
    to.push_back({0, 0, bytes_of({0xB0 | c.channel, 10, pan})});
    to.push_back({0, 0, bytes_of({0xE0 | c.channel, bend & 0x7F, bend >> 7})});
}

} // namespace

void write_midi(const std::filesystem::path& file, const std::vector<MidiChannel>& channels,
                const std::vector<MidiNote>& notes) {
    std::vector<Event> events;
    for (const MidiChannel& c : channels)
        set_up(events, c);
    const auto tick = [](Seconds t) { return std::llround(t.value() * kTicksPerSecond); };
    for (const MidiNote& n : notes) {
        events.push_back({tick(n.span.start), 2, bytes_of({0x90 | n.channel, n.key, n.velocity})});
        events.push_back({tick(n.span.end), 1, bytes_of({0x80 | n.channel, n.key, 0})});
    }
    std::ranges::stable_sort(events, [](const Event& a, const Event& b) {
        return a.tick != b.tick ? a.tick < b.tick : a.order < b.order;
    });
    std::string track;
    std::int64_t now = 0;
    for (const Event& e : events) {
        track += variable_length(e.tick - now) + e.bytes;
        now = e.tick;
    }
    track += variable_length(static_cast<std::int64_t>(kTicksPerSecond)) + bytes_of({0xFF, 0x2F, 0});
    write_file(file, "MThd" + big_endian(6, 4) + big_endian(0, 2) + big_endian(1, 2) +
                         big_endian(kTicksPerBeat, 2) + "MTrk" +
                         big_endian(static_cast<std::uint32_t>(track.size()), 4) + track);
}

} // namespace luft::bench
