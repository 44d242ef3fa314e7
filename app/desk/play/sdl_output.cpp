// The sound device, through SDL's audio part alone.
#include "desk/play/output.h"
#include "desk/play/sdl_audio.h"
#include "desk/play/silent_output.h"

#include <utility>

namespace luft::desk {
namespace {

constexpr Uint16 kBuffer = 512; // frames that the device takes at a time: 11 ms at 48 kHz
// A device plays one buffer while it fills the next. Common practice, no source.
constexpr std::int64_t kBuffers = 2;
constexpr Uint32 kFrameBytes = 2 * sizeof(float);

class SdlOutput final : public Output {
  public:
    explicit SdlOutput(SampleRate rate) : rate_(rate) {
        if (!audio_.started()) return;
        SDL_AudioSpec wanted{};
        wanted.freq = rate.per_second;
        wanted.format = AUDIO_F32SYS;
        wanted.channels = 2;
        wanted.samples = kBuffer;
        SDL_AudioSpec got{};
        device_ = SDL_OpenAudioDevice(nullptr, 0, &wanted, &got, 0); // SDL converts where it must
        if (device_ == 0) return;
        buffer_ = got.samples;
        name_ = default_device(Way::out);
    }
    SdlOutput(const SdlOutput&) = delete;
    SdlOutput& operator=(const SdlOutput&) = delete;
    ~SdlOutput() override {
        if (device_ != 0) SDL_CloseAudioDevice(device_);
    }

    [[nodiscard]] bool opened() const { return device_ != 0; }

    [[nodiscard]] SampleRate rate() const override { return rate_; }
    void queue(std::span<const float> samples) override {
        SDL_QueueAudio(device_, samples.data(), static_cast<Uint32>(samples.size_bytes()));
    }
    [[nodiscard]] std::int64_t queued() const override {
        return SDL_GetQueuedAudioSize(device_) / kFrameBytes;
    }
    [[nodiscard]] std::int64_t delay() const override { return kBuffers * buffer_; }
    void clear() override { SDL_ClearQueuedAudio(device_); }
    void start() override { SDL_PauseAudioDevice(device_, 0); }
    void stop() override { SDL_PauseAudioDevice(device_, 1); }
    [[nodiscard]] std::string name() const override { return name_; }
    [[nodiscard]] std::string note() const override {
        if (SDL_GetAudioDeviceStatus(device_) != SDL_AUDIO_STOPPED) return {};
        return "The sound device was taken away. Connect it again and open the recording again.";
    }

  private:
    SdlAudio audio_; // before the device
    SampleRate rate_;
    SDL_AudioDeviceID device_ = 0;
    std::int64_t buffer_ = 0;
    std::string name_;
};

} // namespace

std::unique_ptr<Output> open_output(SampleRate rate) {
    auto output = std::make_unique<SdlOutput>(rate);
    if (output->opened()) return output;
    const std::string why = SDL_GetError();
    return std::make_unique<SilentOutput>(rate, "No sound device can be opened" +
                                                    (why.empty() ? std::string(".") : " (" + why + ")."));
}

} // namespace luft::desk
