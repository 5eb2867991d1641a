#include "scenes/app.hpp"

#include "scenes/bench/bench_scene.hpp"
#include "scenes/bench/display.hpp"
#include "scenes/present/words.hpp"
#include "scenes/view/png.hpp"
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
#include <cmath>
#include <filesystem>

namespace scenes {
namespace {

constexpr const char* first_rig = "mower";
constexpr std::string_view bench_scene = "bench";
/// What of a frame the model may take, s; drawing needs most of the rest. A replay, for which a
/// person waits, may take more and cost some frames.
constexpr double model_budget = 0.005;
constexpr double replay_budget = 0.03;
constexpr unsigned frames_per_second = 60;

Look look_of(const Appearance& appearance)
{
    const bool is_paper = appearance.ground == Appearance::Ground::paper;
    return {is_paper ? paper_theme : board_theme,
            static_cast<float>(appearance.scale_percent) / 100.0F};
}

/// The fonts, or a complaint that there are none.
struct Faces {
    FontFiles files = find_font_files(std::filesystem::path(sim::assets_folder()) / "fonts");
    Fonts fonts{files};

    Faces()
    {
        if (!fonts.is_usable()) {
            throw sim::RequestError("not one font can be read in " +
                                    sim::in_quotes(sim::assets_folder() + "/fonts"));
        }
    }
};

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

/// Runs a fresh model up to a time, without a window.
std::unique_ptr<BenchModel> model_at(const ShotRequest& request)
{
    const std::string id = request.rig     ? *request.rig
                           : request.sheet ? sim::rig_of_run_sheet(*request.sheet)
                                           : first_rig;
    auto rig = std::make_shared<const sim::Rig>(sim::load_rig(id));
    const sim::RunSheet sheet =
        request.sheet ? sim::load_run_sheet(*request.sheet, *rig) : rig->default_sheet;
    auto model = std::make_unique<BenchModel>(std::move(rig));
    model->begin(sheet, std::llround(request.at_seconds / sim::tick_length));
    model->finish_replay();
    if (model->is_frozen()) {
        throw sim::NumericsError(model->trouble());
    }
    model->pace.is_paused = true;
    return model;
}

} // namespace

int open_window(const WindowRequest& request)
{
    const auto rig =
        std::make_shared<const sim::Rig>(sim::load_rig(request.rig.value_or(first_rig)));
    require_display();
    BenchModel model(rig);
    model.begin_running(); // the replay goes on while the window already shows how far it is
    const Faces faces;
    const Appearance& appearance = request.appearance;
    sf::RenderWindow window(sf::VideoMode(appearance.width_px, appearance.height_px),
                            std::string(words::program), sf::Style::Default,
                            sf::ContextSettings(0, 0, 0));
    window.setFramerateLimit(frames_per_second);
    BenchScene scene(window, faces.files, faces.fonts, model, look_of(appearance));
    sf::Clock clock;
    while (!scene.wants_to_quit()) {
        sf::Event event{};
        while (window.pollEvent(event)) {
            scene.handle(event);
        }
        const float seconds = clock.restart().asSeconds();
        model.advance(static_cast<double>(seconds),
                      Budget(model.is_busy() ? replay_budget : model_budget));
        scene.draw(seconds);
        window.display();
    }
    return 0;
}

int take_shot(const ShotRequest& request)
{
    if (request.scene != bench_scene) {
        throw sim::RequestError("there is no scene " + sim::in_quotes(request.scene) +
                                sim::choices_hint(request.scene, {std::string(bench_scene)}));
    }
    require_display();
    const std::unique_ptr<BenchModel> model = model_at(request);
    sf::err().rdbuf(nullptr); // our own line says what is wrong
    const Faces faces;
    const Appearance& appearance = request.appearance;
    sf::RenderWindow window(sf::VideoMode(appearance.width_px, appearance.height_px),
                            std::string(words::program), sf::Style::None,
                            sf::ContextSettings(0, 0, 0));
    BenchScene scene(window, faces.files, faces.fonts, *model, look_of(appearance));
    // The panels learn how high their contents are in the first frame.
    constexpr int frames = 3;
    for (int i = 0; i < frames; ++i) {
        scene.draw(0.0F);
    }
    sf::Texture picture;
    if (!picture.create(appearance.width_px, appearance.height_px)) {
        throw sim::RequestError("a picture of this size cannot be drawn here");
    }
    picture.update(window);
    sim::atomic_write(request.picture, png_bytes(picture.copyToImage()));
    return 0;
}

} // namespace scenes
