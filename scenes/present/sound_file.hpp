#pragma once

#include <span>
#include <string>

namespace scenes {

/// Samples as the bytes of a WAV file: one channel, 16 bit, `sound_rate` a second.
///
/// source:  RIFF WAVE, format tag 1 (PCM); IBM and Microsoft, Multimedia Programming Interface and
///          Data Specifications 1.0, 1991
std::string wav_bytes(std::span<const float> samples);

} // namespace scenes
