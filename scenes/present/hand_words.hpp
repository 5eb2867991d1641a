#pragma once

#include "scenes/present/phrase.hpp"

/// What the bench says about sound, handles in the drawing and hidden faults.
namespace scenes::words {

// ---- sound
inline constexpr Phrase caption_cord = phrase("cord pulled");
inline constexpr Phrase caption_starts = phrase("engine starts");
inline constexpr Phrase caption_stops = phrase("engine stops");
inline constexpr Phrase caption_hunts = phrase("engine hunts");
inline constexpr Phrase caption_misfires = phrase("engine misfires");
inline constexpr Phrase no_sound_device = phrase("No sound device: the engine is silent.");
inline constexpr Phrase sound = phrase("Sound");
inline constexpr Phrase sound_on = phrase("on");
inline constexpr Phrase sound_off = phrase("mute");
inline constexpr Phrase volume = phrase("Volume");
inline constexpr Phrase captions = phrase("Captions of what is heard");
inline constexpr Phrase sound_note =
    phrase("The engine is heard at real time and down to a tenth of it.");
inline constexpr Phrase key_mute = phrase("sound on or mute");
inline constexpr Phrase key_captions = phrase("captions on or off");

} // namespace scenes::words
