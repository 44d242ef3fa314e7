// Units as types. A bare number never says what it measures; these do, and they don't convert into each
// other.
#pragma once

#include <cmath>
#include <compare>
#include <cstdint>

namespace luft {

/// A number with a unit. Made only explicitly; added to, compared with and divided by its own kind only.
template <class Tag>
class Quantity {
  public:
    constexpr Quantity() = default;
    explicit constexpr Quantity(double value) : value_(value) {}

    /// The bare number, in the unit that the type's name says.
    [[nodiscard]] constexpr double value() const { return value_; }

    constexpr auto operator<=>(const Quantity&) const = default;
    constexpr Quantity operator-() const { return Quantity(-value_); }
    constexpr Quantity& operator+=(Quantity other) { return value_ += other.value_, *this; }
    constexpr Quantity& operator-=(Quantity other) { return value_ -= other.value_, *this; }

    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
    friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.value_ * k); }
    friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(a.value_ * k); }
    friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.value_ / k); }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }

  private:
    double value_ = 0;
};

using Seconds = Quantity<struct SecondsTag>;   ///< media time or a length of time
using Hertz = Quantity<struct HertzTag>;       ///< frequency or rate
using Cents = Quantity<struct CentsTag>;       ///< musical interval; 1200 to the octave
using Decibels = Quantity<struct DecibelsTag>; ///< level or level ratio; the holder says against what
using Lufs = Quantity<struct LufsTag>;         ///< loudness, ITU-R BS.1770
using LoudnessUnits = Quantity<struct LoudnessUnitsTag>; ///< difference of two loudnesses
using MidiPitch = Quantity<struct MidiPitchTag>; ///< pitch as a fractional MIDI number; 69 = A4, 60 = C4

/// Samples a second of one channel.
struct SampleRate {
    int per_second = 0;
    constexpr auto operator<=>(const SampleRate&) const = default;
};

/// A stretch of media time, start included, end not.
struct Span {
    Seconds start;
    Seconds end;

    [[nodiscard]] constexpr Seconds length() const { return end - start; }
    [[nodiscard]] constexpr Seconds middle() const { return (start + end) / 2; }
    [[nodiscard]] constexpr bool contains(Seconds t) const { return start <= t && t < end; }
    [[nodiscard]] constexpr bool overlaps(Span o) const { return start < o.end && o.start < end; }
    constexpr bool operator==(const Span&) const = default;
};

/// How sure a detection is, 0 to 1: of the marks given 0.8, about eight in ten are meant to be right.
struct Confidence {
    double value = 0;
    constexpr auto operator<=>(const Confidence&) const = default;
};

/// The hop of every curve: frame i is centred at i x 10 ms of media time.
inline constexpr Seconds kHop{0.010};

/// Index of a frame of a curve.
struct FrameIndex {
    std::int64_t value = 0;
    constexpr auto operator<=>(const FrameIndex&) const = default;
};

constexpr Seconds time_of(FrameIndex i) {
    return kHop * static_cast<double>(i.value);
}
inline FrameIndex nearest_frame(Seconds t) {
    return {std::llround(t / kHop)};
}

/// Interval from `from` up to `to` in cents: 1200 log2(to/from). Both must be above 0.
inline Cents interval(Hertz from, Hertz to) {
    return Cents(1200 * std::log2(to / from));
}

/// Equal temperament on a given A4 (ISO 16: 440 Hz): 69 + 12 log2(f/A4). f must be above 0.
inline MidiPitch pitch_of(Hertz f, Hertz a4 = Hertz(440)) {
    return MidiPitch(69 + 12 * std::log2(f / a4));
}
inline Hertz frequency_of(MidiPitch p, Hertz a4 = Hertz(440)) {
    return a4 * std::exp2((p.value() - 69) / 12);
}

/// Level of a power ratio (10 log10) and of an amplitude ratio (20 log10), floored at -200 dB.
inline Decibels power_level(double power) {
    return Decibels(10 * std::log10(power > 1e-20 ? power : 1e-20));
}
inline Decibels amplitude_level(double a) {
    return Decibels(20 * std::log10(a > 1e-10 ? a : 1e-10));
}
inline double amplitude_of(Decibels level) {
    return std::pow(10.0, level.value() / 20);
}

namespace literals {
constexpr Seconds operator""_s(long double v) {
    return Seconds(static_cast<double>(v));
}
constexpr Seconds operator""_s(unsigned long long v) {
    return Seconds(static_cast<double>(v));
}
constexpr Seconds operator""_ms(long double v) {
    return Seconds(static_cast<double>(v) / 1000);
}
constexpr Seconds operator""_ms(unsigned long long v) {
    return Seconds(static_cast<double>(v) / 1000);
}
constexpr Hertz operator""_Hz(long double v) {
    return Hertz(static_cast<double>(v));
}
constexpr Hertz operator""_Hz(unsigned long long v) {
    return Hertz(static_cast<double>(v));
}
constexpr Decibels operator""_dB(long double v) {
    return Decibels(static_cast<double>(v));
}
constexpr Decibels operator""_dB(unsigned long long v) {
    return Decibels(static_cast<double>(v));
}
} // namespace literals

} // namespace luft
