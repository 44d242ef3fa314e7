// The movie in the making: encoded and written beside the work that makes its pictures and its sound.
#pragma once

#include "base/side_thread.h"
#include "media/movie_writer.h"
#include "tape/stereo_resampler.h"

#include <memory>
#include <vector>

namespace luft::guide {

class Output {
  public:
    /// `made` is the rate of the sound that comes in. Throws as media::write_movie.
    Output(const std::filesystem::path& file, const media::MovieFormat& format, SampleRate made);

    /// The next frame and the sound of its time. What went wrong with an earlier one comes out here.
    void frame(media::MoviePicture picture, std::vector<float> stereo);
    /// Puts the movie under its name; without it nothing is left.
    void finish();
    [[nodiscard]] media::MovieCodecs codecs() const { return writer_->codecs(); }

  private:
    std::unique_ptr<media::MovieWriter> writer_;
    tape::StereoResampler converter_;
    SideThread side_; ///< last: it uses both
};

} // namespace luft::guide
