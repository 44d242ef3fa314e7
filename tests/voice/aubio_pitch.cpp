#include "voice/aubio_pitch.h"

#include <aubio/aubio.h>
#include <catch2/catch.hpp>

#include <memory>

namespace luft::voice::test {

Curve<Hertz> aubio_pitch(std::span<const float> x, const std::string& method) {
    constexpr uint_t kRate = 44100, kHopSize = 441, kBuffer = 2048;
    const std::unique_ptr<aubio_pitch_t, void (*)(aubio_pitch_t*)> tracker(
        new_aubio_pitch(method.c_str(), kBuffer, kHopSize, kRate), del_aubio_pitch);
    REQUIRE(tracker);
    REQUIRE(aubio_pitch_set_unit(tracker.get(), "Hz") == 0);
    const std::unique_ptr<fvec_t, void (*)(fvec_t*)> in(new_fvec(kHopSize), del_fvec),
        out(new_fvec(1), del_fvec);
    std::vector<float> found;
    for (std::size_t i = 0; i + kHopSize <= x.size(); i += kHopSize) {
        std::copy_n(x.begin() + static_cast<std::ptrdiff_t>(i), kHopSize, in->data);
        aubio_pitch_do(tracker.get(), in.get(), out.get());
        found.push_back(out->data[0] > 0 ? out->data[0] : Curve<Hertz>::kNone);
    }
    return Curve<Hertz>(std::move(found));
}

} // namespace luft::voice::test
