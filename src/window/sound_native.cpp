#ifndef __EMSCRIPTEN__
// The system's sound library, loaded when the first sound is wanted: a maker who wants none pays nothing for it.

#include <alsa/asoundlib.h>
#include <dlfcn.h>

#include "window/platform.h"

namespace kw::window::platform {
namespace {

struct Alsa {
    void* library = ::dlopen("libasound.so.2", RTLD_LAZY | RTLD_LOCAL);
    decltype(&snd_pcm_open) open = of<decltype(&snd_pcm_open)>("snd_pcm_open");
    decltype(&snd_pcm_nonblock) nonblock = of<decltype(&snd_pcm_nonblock)>("snd_pcm_nonblock");
    decltype(&snd_pcm_set_params) set_params = of<decltype(&snd_pcm_set_params)>("snd_pcm_set_params");
    decltype(&snd_pcm_writei) write = of<decltype(&snd_pcm_writei)>("snd_pcm_writei");
    decltype(&snd_pcm_recover) recover = of<decltype(&snd_pcm_recover)>("snd_pcm_recover");
    decltype(&snd_pcm_drain) drain = of<decltype(&snd_pcm_drain)>("snd_pcm_drain");
    decltype(&snd_pcm_close) close = of<decltype(&snd_pcm_close)>("snd_pcm_close");
    decltype(&snd_lib_error_set_handler) set_handler =
        of<decltype(&snd_lib_error_set_handler)>("snd_lib_error_set_handler");

    bool is_there() const {
        return open && nonblock && set_params && write && recover && drain && close && set_handler;
    }

private:
    template <class Function>
    Function of(const char* name) const {
        return library ? reinterpret_cast<Function>(::dlsym(library, name)) : nullptr;
    }
};

// The library would write to standard error of whatever it does not find.
void say_nothing(const char*, int, const char*, int, const char*, ...) {}

bool write_all(const Alsa& alsa, snd_pcm_t* pcm, const std::vector<std::int16_t>& samples) {
    std::size_t done = 0;
    while (done < samples.size()) {
        const snd_pcm_sframes_t wrote = alsa.write(pcm, samples.data() + done, samples.size() - done);
        if (wrote < 0 && alsa.recover(pcm, static_cast<int>(wrote), 1) < 0) return false;
        if (wrote > 0) done += static_cast<std::size_t>(wrote);
    }
    return true;
}

}  // namespace

bool play(const std::vector<std::int16_t>& samples, int rate_hz) {
    static const Alsa alsa;
    if (!alsa.is_there()) return false;
    alsa.set_handler(say_nothing);
    snd_pcm_t* pcm = nullptr;
    // A device that is busy is not waited for.
    if (alsa.open(&pcm, "default", SND_PCM_STREAM_PLAYBACK, SND_PCM_NONBLOCK) < 0) return false;
    alsa.nonblock(pcm, 0);
    constexpr unsigned latency_us = 60'000;
    const bool played = alsa.set_params(pcm, SND_PCM_FORMAT_S16, SND_PCM_ACCESS_RW_INTERLEAVED, 1,
                                        static_cast<unsigned>(rate_hz), 1, latency_us) >= 0 &&
                        write_all(alsa, pcm, samples) && alsa.drain(pcm) >= 0;
    alsa.close(pcm);
    return played;
}

}  // namespace kw::window::platform

#endif
