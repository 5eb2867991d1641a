#include "scenes/bench/bench_scene.hpp"
#include "scenes/bench/display.hpp"
#include "sim/error.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>

// How long a frame of the real window takes, simulation included: a machine that runs at real time
// and leaks, some 300 drops, its twin, ten minutes of history behind it, and three charts of five
// minutes. Leaks are the rig's own faults; drops that are missing to 300 are added.
//
//     xvfb-run -a -s "-screen 0 1280x720x24" build/bench_window [mower|trimmer [seconds behind it]]

namespace {

using Clock = std::chrono::steady_clock;

constexpr int warm_up = 120;
constexpr int frame_count = 1200;
constexpr float frame_seconds = 1.0F / 60.0F;
constexpr std::size_t least_drops = 300;
constexpr double shed =
    8e-6; ///< kg, a drop, that each mouth loses in a frame until there are so many
constexpr double model_budget = 0.005; // as in the program's own loop

double milliseconds(Clock::time_point from)
{
    return std::chrono::duration<double, std::milli>(Clock::now() - from).count();
}

/// Every leak a machine can have, wide open.
constexpr std::array leaks{
    "hose_cracked",     "hose_clamp_loose",     "bowl_drain_weeping",       "bowl_gasket_leak",
    "needle_seep",      "bulb_cracked",         "metering_diaphragm_holed", "cup_plug_leaks",
    "pump_cover_leaks", "suction_hose_cracked", "nozzle_check_leaks"};

std::unique_ptr<scenes::BenchModel> running(const std::string& id, double behind)
{
    auto model =
        std::make_unique<scenes::BenchModel>(std::make_shared<const sim::Rig>(sim::load_rig(id)));
    model->begin_running();
    model->finish_replay();
    for (const char* const leak : leaks) {
        if (model->rig().find_fault(leak) != nullptr) {
            model->post(sim::SetFault{leak, 1.0});
        }
    }
    model->go_ahead_to(model->seconds() + behind);
    model->finish_replay();
    model->pace.is_paused = false;
    return model;
}

/// Turns the wheel over the first chart until it shows some five minutes.
void widen_charts(scenes::BenchScene& scene)
{
    sf::Event event{};
    event.type = sf::Event::MouseMoved;
    event.mouseMove = {100, 600};
    scene.handle(event);
    event.type = sf::Event::MouseWheelScrolled;
    event.mouseWheelScroll = {sf::Mouse::VerticalWheel, -7.0F, 100, 600};
    scene.handle(event);
    event.type = sf::Event::MouseMoved;
    event.mouseMove = {640, 300};
    scene.handle(event);
}

double frame(sf::RenderWindow& window, scenes::BenchModel& model, scenes::BenchScene& scene)
{
    const Clock::time_point begin = Clock::now();
    sf::Event event{};
    while (window.pollEvent(event)) {
        scene.handle(event);
    }
    const auto has_leave = [begin] { return milliseconds(begin) < model_budget * 1000.0; };
    model.advance(static_cast<double>(frame_seconds), has_leave);
    scene.draw(frame_seconds);
    window.display();
    return milliseconds(begin);
}

void measure(const std::string& id, double behind)
{
    const std::unique_ptr<scenes::BenchModel> model = running(id, behind);
    const scenes::FontFiles files =
        scenes::find_font_files(std::filesystem::path(sim::assets_folder()) / "fonts");
    const scenes::Fonts fonts(files);
    sf::RenderWindow window(sf::VideoMode(1280, 720), "Standpipe", sf::Style::None,
                            sf::ContextSettings(0, 0, 0));
    scenes::SettingsKeeper settings{scenes::Settings()};
    scenes::BenchScene scene(window, files, fonts, *model, settings);
    std::vector<double> times;
    std::clock_t counted_from = 0;
    std::size_t drops = 0;
    for (int i = 0; i < warm_up + frame_count; ++i) {
        if (i == 2) {
            widen_charts(scene);
        }
        if (i == warm_up) {
            counted_from = std::clock();
        }
        if (scene.drop_count() < least_drops) {
            scene.shed_drops(shed);
        }
        const double time = frame(window, *model, scene);
        if (i >= warm_up) {
            times.push_back(time);
            drops += scene.drop_count();
        }
    }
    // Of all threads, the software renderer's among them: it hardly moves with what else runs.
    const double processor_ms =
        1000.0 * static_cast<double>(std::clock() - counted_from) / CLOCKS_PER_SEC / frame_count;
    std::ranges::sort(times);
    const auto share = [&times](double part) {
        return times[static_cast<std::size_t>(part * static_cast<double>(times.size() - 1))];
    };
    std::printf("%s, %d frames at 1280x720: median %.1f ms, 95 %% %.1f, 99 %% %.1f, longest %.1f "
                "(aim: 12 and, for 99 %%, 25)\n",
                id.c_str(), frame_count, share(0.5), share(0.95), share(0.99), times.back());
    std::printf("    %zu drops on their way, on average\n", drops / frame_count);
    std::printf("    %.1f ms of processor time a frame, on all cores together\n", processor_ms);
    const scenes::BenchRun& run = model->run();
    std::printf("    %.0f s of history: %.1f MB of readings, %.1f MB in %zu moments\n",
                model->end_seconds(),
                static_cast<double>(run.history().size() + run.twin_history().size()) / 1e6,
                static_cast<double>(run.moments().size()) / 1e6, run.moments().count());
}

} // namespace

int main(int count, char** words)
{
    try {
        scenes::require_display();
        measure(count > 1 ? words[1] : "mower", count > 2 ? std::stod(words[2]) : 600.0);
    } catch (const std::exception& error) {
        std::fprintf(stderr, "bench_window: %s\n", error.what());
        return 1;
    }
    return 0;
}
