#pragma once

namespace scenes {

/// How a person wants to hear the bench.
struct SoundSettings {
    double volume = 0.6; ///< 0 to 1
    bool is_on = true;
    bool has_captions = true;
    /// What the engine is rendered with.
    [[nodiscard]] double loudness() const { return is_on ? volume : 0.0; }
    bool operator==(const SoundSettings&) const = default;
};

} // namespace scenes
