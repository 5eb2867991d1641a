#pragma once

#include "scenes/present/sample_ring.hpp"

#include <SFML/Audio/SoundStream.hpp>

#include <vector>

namespace scenes {

/// Whether the system has a device that plays sound. Ask before any object of SFML's audio exists:
/// without a device the first one fills the terminal with complaints and may end the program.
bool has_sound_device();

/// Plays what is pushed into a ring, from a thread of its own.
class SoundPlayer : private sf::SoundStream {
public:
    /// valid:   the system has a sound device, and the ring outlives the player
    explicit SoundPlayer(SampleRing& ring);
    ~SoundPlayer() override;
    SoundPlayer(const SoundPlayer&) = delete;
    SoundPlayer& operator=(const SoundPlayer&) = delete;
    SoundPlayer(SoundPlayer&&) = delete;
    SoundPlayer& operator=(SoundPlayer&&) = delete;

private:
    bool onGetData(Chunk& chunk) override;
    void onSeek(sf::Time /*to*/) override {}

    SampleRing& ring_;
    std::vector<sf::Int16> samples_;
};

} // namespace scenes
