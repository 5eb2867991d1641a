#include "scenes/app.hpp"

#include "scenes/bench/bench_scene.hpp"
#include "scenes/bench/display.hpp"
#include "scenes/bench/faces.hpp"
#include "scenes/bench/trouble_window.hpp"
#include "scenes/present/settings_keeper.hpp"
#include "scenes/present/words.hpp"
#include "scenes/shop/order_files.hpp"
#include "sim/error.hpp"
#include "sim/file_write.hpp"
#include "sim/printable.hpp"
#include "sim/run_sheet.hpp"
#include "sim/words.hpp"

#include <SFML/Graphics/Image.hpp>
#include <SFML/Graphics/Texture.hpp>
#include <SFML/System/Clock.hpp>
#include <SFML/System/Err.hpp>

#include <chrono>
#include <filesystem>

namespace scenes {
namespace {

/// What of a frame the model may take, s; drawing needs most of the rest. A replay, for which a
/// person waits, may take more and cost some frames.
constexpr double model_budget = 0.005;
constexpr double replay_budget = 0.03;
/// Work on an order is waited for too, but is watched.
constexpr double order_budget = 0.02;
constexpr unsigned frames_per_second = 60;

/// Says no when the model's share of a frame is used up.
class Budget {
public:
    explicit Budget(double seconds) : seconds_(seconds) {}
    bool operator()() const
    {
        const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - begin_;
        return spent.count() < seconds_;
    }

private:
    double seconds_;
    std::chrono::steady_clock::time_point begin_ = std::chrono::steady_clock::now();
};

/// This person's settings, and what the command line wants of this window only.
SettingsKeeper settings_for(const WindowRequest& request)
{
    const std::string path = settings_path();
    SettingsKeeper settings(path, load_settings(path, usual_settings()));
    settings.override_with([&](Settings& changed) {
        request.appearance.apply(changed);
        changed.machine = request.rig.value_or(changed.machine);
    });
    return settings;
}

/// The machine to begin with. One that was asked for must be there; for the one of last time
/// another may stand in; null when there is none at all.
std::shared_ptr<const sim::Rig> machine_for(const WindowRequest& request, SettingsKeeper& settings)
{
    std::vector<std::string> ids{settings.now().machine};
    std::string trouble;
    try {
        const std::vector<std::string> all = sim::rig_ids();
        ids.insert(ids.end(), all.begin(), request.rig ? all.begin() : all.end());
    } catch (const std::runtime_error& error) { // the folder is not there
        trouble = error.what();
    }
    for (const std::string& id : ids) {
        try {
            auto rig = std::make_shared<const sim::Rig>(sim::load_rig(id));
            settings.override_with([&](Settings& changed) { changed.machine = id; });
            if (!trouble.empty()) {
                settings.without().push_back({words::no_machine, trouble});
            }
            return rig;
        } catch (const std::runtime_error& error) { // not there, or its file is wrong
            trouble = trouble.empty() ? error.what() : trouble;
        }
    }
    if (request.rig) {
        throw sim::RequestError(trouble);
    }
    settings.without().push_back({words::no_machines, trouble});
    return nullptr;
}

/// Where the window comes to lie: where it lay last time, else in the middle, as far as that is on
/// the screen.
WindowPlace place_on_screen(const Settings& settings, bool has_place)
{
    const sf::VideoMode screen = sf::VideoMode::getDesktopMode();
    WindowPlace place = settings.window.value_or(WindowPlace{});
    if (!has_place) {
        place.left = (static_cast<int>(screen.width) - static_cast<int>(place.width)) / 2;
        place.top = (static_cast<int>(screen.height) - static_cast<int>(place.height)) / 2;
    }
    return fitted(place, screen.width, screen.height);
}

/// Notes where a person puts the window.
class PlaceWatch {
public:
    void look(const sf::RenderWindow& window, SettingsKeeper& settings)
    {
        const sf::Vector2i corner = window.getPosition();
        const sf::Vector2u size = window.getSize();
        const WindowPlace now{corner.x, corner.y, size.x, size.y};
        if (frames_ < frames_to_settle) {
            ++frames_; // the window manager may still move it
        } else if (!(now == known_)) {
            settings.change([&](Settings& changed) { changed.window = now; });
        }
        known_ = now;
    }

private:
    static constexpr int frames_to_settle = 30;
    int frames_ = 0;
    WindowPlace known_;
};

} // namespace

int open_window(const WindowRequest& request)
{
    require_display();
    SettingsKeeper settings = settings_for(request);
    const auto machine = machine_for(request, settings);
    if (machine == nullptr) {
        return show_trouble(settings, frames_per_second);
    }
    BenchModel model(machine);
    model.begin_running();    // the replay goes on while the window already shows how far it is
    sf::err().rdbuf(nullptr); // our own line says what is wrong
    const Faces faces(settings);
    const bool has_place = settings.now().window && !request.appearance.size;
    const WindowPlace place = place_on_screen(settings.now(), has_place);
    sf::RenderWindow window(sf::VideoMode(place.width, place.height), std::string(words::program),
                            sf::Style::Default, sf::ContextSettings(0, 0, 0));
    window.setPosition({place.left, place.top}); // else it may come to lie half off the screen
    window.setFramerateLimit(frames_per_second);
    BenchScene scene(window, faces.files, faces.fonts, model, settings,
                     request.appearance.is_projector);
    scene.open_sound();
    scene.builder().keep_drafts_in(shop::drafts_folder());
    PlaceWatch watch;
    sf::Clock clock;
    while (!scene.wants_to_quit()) {
        sf::Event event{};
        while (window.pollEvent(event)) {
            scene.handle(event);
        }
        const float seconds = clock.restart().asSeconds();
        if (scene.shows_orders()) {
            scene.advance_orders(static_cast<double>(seconds), Budget(order_budget));
        } else {
            model.advance(static_cast<double>(seconds),
                          Budget(model.is_busy() ? replay_budget : model_budget));
        }
        scene.draw(seconds);
        window.display();
        watch.look(window, settings);
        settings.tend(static_cast<double>(seconds));
    }
    settings.save();
    return 0;
}

} // namespace scenes
