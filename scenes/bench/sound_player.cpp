#include "scenes/bench/sound_player.hpp"

#include "scenes/present/engine_sound.hpp"

#include <cstdlib>
#include <dlfcn.h>
#include <fcntl.h>
#include <unistd.h>

namespace scenes {
namespace {

constexpr std::size_t chunk_samples = 1024; // three wait in the device: 70 ms

/// Keeps what libraries say of missing sound cards off the terminal: our own line is enough.
class Hush {
public:
    Hush() : kept_(::dup(STDERR_FILENO))
    {
        const int nowhere = ::open("/dev/null", O_WRONLY | O_CLOEXEC);
        if (kept_ >= 0 && nowhere >= 0) {
            ::dup2(nowhere, STDERR_FILENO);
        }
        ::close(nowhere);
    }
    ~Hush()
    {
        ::dup2(kept_, STDERR_FILENO);
        ::close(kept_);
    }
    Hush(const Hush&) = delete;
    Hush& operator=(const Hush&) = delete;

private:
    int kept_;
};

} // namespace

bool has_sound_device()
{
    const Hush hush;
    void* const library = ::dlopen("libopenal.so.1", RTLD_NOW);
    if (library == nullptr) {
        return false;
    }
    using Open = void* (*)(const char*);
    using Close = char (*)(void*);
    const auto open = reinterpret_cast<Open>(::dlsym(library, "alcOpenDevice"));
    const auto close = reinterpret_cast<Close>(::dlsym(library, "alcCloseDevice"));
    void* const device = open == nullptr ? nullptr : open(nullptr);
    if (device != nullptr && close != nullptr) {
        close(device);
    }
    return device != nullptr;
}

SoundPlayer::SoundPlayer(SampleRing& ring) : ring_(ring), samples_(chunk_samples)
{
    initialize(1, static_cast<unsigned>(sound_rate));
    play();
}

SoundPlayer::~SoundPlayer()
{
    stop();
}

bool SoundPlayer::onGetData(Chunk& chunk)
{
    ring_.pull(samples_);
    chunk.samples = samples_.data();
    chunk.sampleCount = samples_.size();
    return true;
}

} // namespace scenes
