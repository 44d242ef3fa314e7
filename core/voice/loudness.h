// Loudness of the recording by ITU-R BS.1770 and EBU R 128, through libebur128.
#pragma once

#include "base/samples.h"
#include "voice/curves.h"

#include <memory>
#include <vector>

namespace luft::voice {

/// Listens to native blocks in order. Momentary loudness (400 ms window, EBU Tech 3341 section 2.2) is read
/// every 10 ms and stands at the middle of its window; integrated loudness (BS.1770-4 with its two gates),
/// loudness range (EBU Tech 3342) and true peak (BS.1770-4 annex 2, four times oversampled) are read at the
/// end. Readings are none below -70 LUFS, the absolute gate, and for windows that the recording doesn't fill.
class LoudnessMeter {
  public:
    explicit LoudnessMeter(const AudioFormat& format); ///< throws Error(unsupported) for formats it can't do
    LoudnessMeter(LoudnessMeter&&) noexcept;
    LoudnessMeter& operator=(LoudnessMeter&&) noexcept;
    ~LoudnessMeter();

    void add(const AudioBlock& block);

    [[nodiscard]] Loudness summary() const;
    /// Momentary loudness as a curve of `frames` values.
    [[nodiscard]] Curve<Lufs> momentary(std::size_t frames) const;
    /// Short-term loudness (3 s window) now.
    [[nodiscard]] std::optional<Lufs> short_term() const;
    /// Momentary loudness now.
    [[nodiscard]] std::optional<Lufs> momentary_now() const;

  private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace luft::voice
