#include "reference/aubio_onset.h"

#include "base/error.h"

#include <aubio/aubio.h>

#include <algorithm>
#include <memory>

namespace luft::reference {

std::vector<Seconds> aubio_onsets(const std::string& method, std::span<const float> samples,
                                  SampleRate rate) {
    constexpr uint_t kWindow = 1024, kStep = 128;
    const std::unique_ptr<aubio_onset_t, void (*)(aubio_onset_t*)> detector(
        new_aubio_onset(method.c_str(), kWindow, kStep, static_cast<uint_t>(rate.per_second)),
        del_aubio_onset);
    if (!detector) throw Error(Fault::not_found, "libaubio has no onset detector " + method + ".");
    const std::unique_ptr<fvec_t, void (*)(fvec_t*)> in(new_fvec(kStep), del_fvec),
        out(new_fvec(1), del_fvec);
    std::vector<Seconds> found;
    for (std::size_t i = 0; i + kStep <= samples.size(); i += kStep) {
        std::copy_n(samples.begin() + static_cast<std::ptrdiff_t>(i), kStep, in->data);
        aubio_onset_do(detector.get(), in.get(), out.get());
        if (out->data[0] > 0)
            found.push_back(Seconds(static_cast<double>(aubio_onset_get_last_s(detector.get()))));
    }
    return found;
}

} // namespace luft::reference
