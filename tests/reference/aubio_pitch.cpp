#include "reference/aubio_pitch.h"

#include "base/error.h"

#include <aubio/aubio.h>

namespace luft::reference {
namespace {

constexpr uint_t kRate = 44100, kHopSize = 441, kBuffer = 2048;

aubio_pitch_t* as_aubio(void* tracker) {
    return static_cast<aubio_pitch_t*>(tracker);
}

using Vector = std::unique_ptr<fvec_t, void (*)(fvec_t*)>;

} // namespace

void AubioPitch::Free::operator()(void* tracker) const {
    del_aubio_pitch(as_aubio(tracker));
}

AubioPitch::AubioPitch(const std::string& method)
    : tracker_(new_aubio_pitch(method.c_str(), kBuffer, kHopSize, kRate)) {
    if (!tracker_ || aubio_pitch_set_unit(as_aubio(tracker_.get()), "Hz") != 0)
        throw Error(Fault::not_found, "libaubio has no pitch tracker " + method + ".");
}

Curve<Hertz> AubioPitch::track(std::span<const float> x) {
    const Vector in(new_fvec(kHopSize), del_fvec), out(new_fvec(1), del_fvec);
    for (uint_t n = 0; n < 2 * kBuffer; n += kHopSize) // new_fvec is silence
        aubio_pitch_do(as_aubio(tracker_.get()), in.get(), out.get());
    std::vector<float> found;
    for (std::size_t i = 0; i + kHopSize <= x.size(); i += kHopSize) {
        std::copy_n(x.begin() + static_cast<std::ptrdiff_t>(i), kHopSize, in->data);
        aubio_pitch_do(as_aubio(tracker_.get()), in.get(), out.get());
        found.push_back(out->data[0] > 0 ? out->data[0] : Curve<Hertz>::kNone);
    }
    return Curve<Hertz>(std::move(found));
}

} // namespace luft::reference
