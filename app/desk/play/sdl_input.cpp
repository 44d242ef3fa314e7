// The recording device, through SDL's audio part alone.
#include "desk/play/capture.h"
#include "desk/play/sdl_audio.h"

#include <array>
#include <utility>

namespace luft::desk {
namespace {

constexpr Uint16 kBuffer = 512; // samples that the device gives at a time: 11 ms at 48 kHz

class SdlInput final : public Input {
  public:
    SdlInput() {
        if (!audio_.started()) return;
        SDL_AudioSpec wanted{};
        wanted.freq = kRate.per_second;
        wanted.format = AUDIO_F32SYS;
        wanted.channels = 1;
        wanted.samples = kBuffer;
        device_ = SDL_OpenAudioDevice(nullptr, 1, &wanted, nullptr, 0); // SDL converts where it must
        if (device_ != 0) name_ = default_device(Way::in);
    }
    SdlInput(const SdlInput&) = delete;
    SdlInput& operator=(const SdlInput&) = delete;
    ~SdlInput() override {
        if (device_ != 0) SDL_CloseAudioDevice(device_);
    }

    [[nodiscard]] bool opened() const { return device_ != 0; }

    void start() override {
        SDL_ClearQueuedAudio(device_);
        SDL_PauseAudioDevice(device_, 0);
    }
    void stop() override { SDL_PauseAudioDevice(device_, 1); }
    void fetch(std::vector<float>& out) override {
        std::array<float, 4096> piece{};
        while (const Uint32 bytes = SDL_DequeueAudio(device_, piece.data(), sizeof piece))
            out.insert(out.end(), piece.begin(),
                       piece.begin() + static_cast<std::ptrdiff_t>(bytes / sizeof(float)));
    }
    [[nodiscard]] std::string name() const override { return name_; }
    [[nodiscard]] std::string note() const override {
        if (SDL_GetAudioDeviceStatus(device_) != SDL_AUDIO_STOPPED) return {};
        return "The microphone was taken away. Connect it again and switch recording on again.";
    }

  private:
    SdlAudio audio_; // before the device
    SDL_AudioDeviceID device_ = 0;
    std::string name_;
};

class NoInput final : public Input {
  public:
    explicit NoInput(std::string reason) : reason_(std::move(reason)) {}
    void start() override {}
    void stop() override {}
    void fetch(std::vector<float>&) override {}
    [[nodiscard]] std::string name() const override { return "no microphone"; }
    [[nodiscard]] std::string note() const override {
        return reason_ +
               " Nothing is recorded; all else works. Connect a microphone, see that no other program "
               "holds it alone, and switch recording on again.";
    }

  private:
    std::string reason_;
};

} // namespace

std::unique_ptr<Input> open_input() {
    auto input = std::make_unique<SdlInput>();
    if (input->opened()) return input;
    const std::string why = SDL_GetError();
    return std::make_unique<NoInput>("No microphone can be opened" +
                                     (why.empty() ? std::string(".") : " (" + why + ")."));
}

} // namespace luft::desk
