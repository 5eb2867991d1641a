#include "scenes/bench/trouble_window.hpp"

#include "scenes/bench/faces.hpp"
#include "scenes/bench/settings_dialog.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/panel.hpp"
#include "sim/rig.hpp"

#include <SFML/Graphics/RenderWindow.hpp>

#include <algorithm>
#include <utility>

namespace scenes {

int show_trouble(SettingsKeeper& settings, unsigned frames_per_second)
{
    constexpr int nothing_was_done = 2;
    const Faces faces(settings);
    sf::RenderWindow window(sf::VideoMode(800, 420), std::string(words::program),
                            sf::Style::Default, sf::ContextSettings(0, 0, 0));
    window.setPosition({0, 0}); // else it may come to lie half off the screen
    window.setFramerateLimit(frames_per_second);
    Interface ui(window, faces.files, look_of(settings.now(), 0.0F));
    apply_settings(settings, 0.0F, ui);
    std::vector<std::string> lines;
    for (const Without& without : std::exchange(settings.without(), {})) {
        lines.push_back(without.line());
    }
    lines.push_back(filled(words::assets_are, {sim::assets_folder()}));
    for (bool is_open = true; is_open;) {
        sf::Event event{};
        while (window.pollEvent(event)) {
            ui.handle(event);
            is_open = is_open && event.type != sf::Event::Closed;
        }
        const sf::Vector2f size(window.getSize());
        window.setView(sf::View(sf::FloatRect({}, size)));
        ui.begin_frame(1.0F / static_cast<float>(frames_per_second));
        {
            const Panel panel(ui, {.name = words::trouble, .box = {{}, size}, .note = {}});
            for (const std::string& line : lines) {
                paragraph(ui, line);
            }
            const bool is_left = button(ui, {.name = words::leave, .is_primary = true});
            is_open = is_open && !is_left;
        }
        is_open = is_open && !ui.take_key(sf::Keyboard::Q, {.control = true});
        window.clear(to_sfml(ui.look().theme.ground));
        ui.draw();
        window.display();
    }
    return nothing_was_done;
}

} // namespace scenes
