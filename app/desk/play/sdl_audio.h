// What sound going out and sound coming in share of SDL.
#pragma once

#define SDL_MAIN_HANDLED
#include <SDL.h>

#include <string>

namespace luft::desk {

/// SDL's audio part, counted by SDL itself.
class SdlAudio {
  public:
    SdlAudio() {
        SDL_SetMainReady();
        SDL_SetHint(SDL_HINT_NO_SIGNAL_HANDLERS, "1"); // Ctrl+C is the program's
        SDL_SetHint(SDL_HINT_APP_NAME, "Luftpause");   // what a mixer shows
        started_ = SDL_InitSubSystem(SDL_INIT_AUDIO) == 0;
    }
    SdlAudio(const SdlAudio&) = delete;
    SdlAudio& operator=(const SdlAudio&) = delete;
    ~SdlAudio() {
        if (started_) SDL_QuitSubSystem(SDL_INIT_AUDIO);
    }
    [[nodiscard]] bool started() const { return started_; }

  private:
    bool started_ = false;
};

enum class Way { out, in };

/// The default device's name, else the driver's.
inline std::string default_device(Way way) {
    char* said = nullptr;
    SDL_AudioSpec spec{};
    std::string name;
    if (SDL_GetDefaultAudioInfo(&said, &spec, way == Way::in ? 1 : 0) == 0 && said != nullptr) name = said;
    SDL_free(said);
    const char* driver = SDL_GetCurrentAudioDriver();
    return name.empty() && driver != nullptr ? driver : name;
}

} // namespace luft::desk
