#pragma once

#include <string_view>

/// What the bench says about sound, handles in the drawing and hidden faults.
namespace scenes::words {

// ---- sound
inline constexpr std::string_view caption_cord = "cord pulled";
inline constexpr std::string_view caption_starts = "engine starts";
inline constexpr std::string_view caption_stops = "engine stops";
inline constexpr std::string_view caption_hunts = "engine hunts";
inline constexpr std::string_view caption_misfires = "engine misfires";
inline constexpr std::string_view no_sound_device = "No sound device: the engine is silent.";
inline constexpr std::string_view sound = "Sound";
inline constexpr std::string_view sound_on = "on";
inline constexpr std::string_view sound_off = "mute";
inline constexpr std::string_view volume = "Volume";
inline constexpr std::string_view captions = "Captions of what is heard";
inline constexpr std::string_view sound_note =
    "The engine is heard at real time and down to a tenth of it.";
inline constexpr std::string_view key_mute = "sound on or mute";
inline constexpr std::string_view key_captions = "captions on or off";

} // namespace scenes::words
