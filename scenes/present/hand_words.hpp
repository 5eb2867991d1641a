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
inline constexpr Phrase sound_note =
    phrase("The engine is heard at real time and down to a tenth of it.");
inline constexpr Phrase key_mute = phrase("sound on or mute");
inline constexpr Phrase key_captions = phrase("captions on or off");

// ---- handles in the drawing
inline constexpr Phrase hands = phrase("Handles in the drawing");
inline constexpr Phrase hand_cord = phrase("Handle of the pull cord");
inline constexpr Phrase hand_bulb = phrase("Bulb");
inline constexpr Phrase hand_tap = phrase("Handle of the fuel tap");
inline constexpr Phrase hand_cap = phrase("Tank cap, to turn");
inline constexpr Phrase hand_tilt = phrase("Dial that tips the machine");
inline constexpr Phrase cord_tip = phrase("Drag it out: the cord is pulled as far and as fast.");
inline constexpr Phrase bulb_tip = phrase("Hold it down to press the bulb; let go and it returns.");
inline constexpr Phrase tap_tip = phrase("Drag to turn the tap, press to open or shut it.");
inline constexpr Phrase cap_tip = phrase("Press to loosen the cap or to tighten it.");
inline constexpr Phrase tilt_tip = phrase("Drag round to tip the machine; press to set it level.");
inline constexpr Phrase pull_further = phrase("A short pull: take the handle further out.");
inline constexpr Phrase pull_faster =
    phrase("A slow pull turns the engine over slowly: pull faster.");
inline constexpr Phrase key_tip = phrase("tip the machine back or forwards");
inline constexpr Phrase key_stop_switch = phrase("stop switch on or off");
inline constexpr Phrase key_cap = phrase("loosen or tighten the tank cap");

// ---- faults
inline constexpr Phrase surprise_me = phrase("Surprise me");
inline constexpr Phrase surprise_more = phrase("Hide one more");
inline constexpr Phrase reveal = phrase("Reveal");
inline constexpr Phrase broken_now = phrase("Broken now");
inline constexpr Phrase one_hidden = phrase("One fault is hidden. Find it from what you see.");
inline constexpr Phrase some_hidden = phrase("{0} faults are hidden. Find them from what you see.");
inline constexpr Phrase hidden_note =
    phrase("The list of faults comes back when they are revealed.");

} // namespace scenes::words
