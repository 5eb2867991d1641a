#include "scenes/bench/bench_panels.hpp"

#include "scenes/present/hand_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"

namespace scenes {

void show_sound(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    Settings now = desk.settings.now();
    double volume = now.volume_percent;
    bool is_changed = toggle(
        ui, {.name = words::mute, .on_text = words::on, .off_text = words::off}, now.is_muted);
    tip(ui, words::sound_note);
    if (slider(ui,
               {.name = words::volume,
                .high = 100.0,
                .step = 5.0,
                .unit = "%",
                .rest = Settings().volume_percent,
                .is_enabled = !now.is_muted},
               volume)) {
        now.volume_percent = static_cast<int>(volume);
        is_changed = true;
    }
    is_changed = toggle(ui, {.name = words::captions, .on_text = words::on, .off_text = words::off},
                        now.has_captions) ||
                 is_changed;
    if (is_changed) {
        desk.settings.change([&](Settings& settings) { settings = now; });
    }
}

} // namespace scenes
