#include "guide/output.h"

#include <utility>

namespace luft::guide {
namespace {

constexpr std::size_t kWaiting = 8; // frames; a picture of 1080p is 3 MB

} // namespace

Output::Output(const std::filesystem::path& file, const media::MovieFormat& format, SampleRate made)
    : writer_(media::write_movie(file, format)), converter_(made, format.sample_rate), side_(kWaiting) {}

void Output::frame(media::MoviePicture picture, std::vector<float> stereo) {
    side_.run([this, picture = std::move(picture), stereo = std::move(stereo)] {
        writer_->picture(picture);
        std::vector<float> converted;
        converter_.process(stereo, converted);
        writer_->sound(converted);
    });
}

void Output::finish() {
    side_.run([this] {
        std::vector<float> rest;
        converter_.finish(rest);
        writer_->sound(rest);
        writer_->finish();
    });
    side_.finish();
}

} // namespace luft::guide
