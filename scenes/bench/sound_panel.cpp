#include "scenes/bench/bench_panels.hpp"

#include "scenes/present/hand_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"

namespace scenes {

void show_sound(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    SoundSettings& sound = desk.view.sound;
    toggle(ui, {.name = words::sound, .on_text = words::sound_on, .off_text = words::sound_off},
           sound.is_on);
    tip(ui, words::sound_note);
    slider(ui,
           {.name = words::volume,
            .step = 0.05,
            .shown_per_unit = 100.0,
            .unit = "%",
            .rest = SoundSettings{}.volume,
            .is_enabled = sound.is_on},
           sound.volume);
    toggle(ui, {.name = words::captions, .on_text = words::shown, .off_text = words::hidden},
           sound.has_captions);
}

} // namespace scenes
