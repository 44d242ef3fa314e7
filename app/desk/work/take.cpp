#include "desk/work/take.h"

#include "base/error.h"

#include <system_error>
#include <utility>

namespace luft::desk {
namespace {

media::MovieFormat voice_format() {
    media::MovieFormat format;
    format.sample_rate = Take::kRate;
    format.channels = 1;
    return format;
}

void make_folder(const std::filesystem::path& folder) {
    std::error_code failure;
    std::filesystem::create_directories(folder, failure);
    if (failure)
        throw Error(Fault::cannot_write,
                    "The folder '" + folder.string() +
                        "' for the recorded voice can't be made: " + failure.message() + ".",
                    "Copy the project to a folder that can be written, and open the copy.");
}

} // namespace

Take::Take(std::filesystem::path file, bool second)
    : file_(std::move(file)),
      beside_(file_.parent_path() / (file_.stem().string() + (second ? "-take-2.wav" : "-take-1.wav"))),
      second_(second) {
    make_folder(file_.parent_path());
    writer_ = media::write_movie(beside_, voice_format());
}

Take::~Take() {
    if (!writer_) return;
    writer_.reset();
    std::error_code ignored;
    std::filesystem::remove(file_.parent_path(), ignored); // only when it is empty
}

void Take::add(std::span<const float> samples) {
    writer_->sound(samples);
    samples_ += static_cast<std::int64_t>(samples.size());
}

void Take::keep() {
    if (writer_) { // not yet finished by an attempt before
        writer_->finish();
        writer_.reset();
    }
    std::error_code failure;
    std::filesystem::rename(beside_, file_, failure);
    if (failure)
        throw Error(Fault::cannot_write,
                    "'" + file_.string() + "' can't be put in place: " + failure.message() + ".",
                    "The recording is in '" + beside_.filename().string() + "' beside it.");
}

} // namespace luft::desk
