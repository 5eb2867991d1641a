#include "scenes/app.hpp"

#include "scenes/bench/bench_scene.hpp"
#include "scenes/bench/display.hpp"
#include "scenes/bench/faces.hpp"
#include "scenes/bench/order_shots.hpp"
#include "scenes/present/run_files.hpp"
#include "scenes/present/settings_keeper.hpp"
#include "scenes/present/widget_check.hpp"
#include "scenes/present/words.hpp"
#include "scenes/shop/asset_files.hpp"
#include "scenes/shop/order_files.hpp"
#include "scenes/view/png.hpp"
#include "sim/error.hpp"
#include "sim/file_write.hpp"
#include "sim/printable.hpp"
#include "sim/run_sheet.hpp"
#include "sim/words.hpp"

#include <SFML/Graphics/Image.hpp>
#include <SFML/Graphics/Texture.hpp>
#include <SFML/System/Err.hpp>

#include <algorithm>
#include <cmath>
#include <functional>
#include <iostream>

// Pictures of scenes: one, or all that are looked through before a change is taken.

namespace scenes {
namespace {

constexpr std::string_view bench_scene = "bench";
constexpr std::string_view order_scene = "order";
constexpr std::string_view shelf_scene = "shelf";

/// A fresh model run up to a time, without a window.
std::unique_ptr<BenchModel> model_at(std::shared_ptr<const sim::Rig> rig,
                                     const sim::RunSheet& sheet, double seconds)
{
    auto model = std::make_unique<BenchModel>(std::move(rig));
    model->begin(sheet, std::llround(seconds / sim::tick_length));
    model->finish_replay();
    if (model->is_frozen()) {
        throw sim::NumericsError(model->trouble());
    }
    model->pace.is_paused = true;
    return model;
}

/// What a picture shows.
struct Motif {
    std::string name;
    Appearance appearance;
    std::function<void(BenchView&)> pose = [](BenchView&) {};
    std::optional<std::string> part = {};        ///< of the drawing, shown large
    bool is_shut = false;                        ///< the machine from outside
    std::optional<std::string> boxes = {};       ///< a CSV file for where the drawing's words stand
    std::function<void(BenchScene&)> stage = {}; ///< what is put in place of the bench
};

/// Draws the bench, writes its picture and gives what is wrong with its widgets.
std::vector<std::string> picture_of(BenchModel& model, const Motif& motif, const std::string& path)
{
    // A picture does not depend on who takes it.
    Settings wanted;
    wanted.window = WindowPlace{};
    wanted.machine = model.rig().id;
    motif.appearance.apply(wanted);
    const PixelSize size{wanted.window->width, wanted.window->height};
    SettingsKeeper settings(wanted);
    const Faces faces(settings);
    sf::RenderWindow window(sf::VideoMode(size.width, size.height), std::string(words::program),
                            sf::Style::None, sf::ContextSettings(0, 0, 0));
    BenchScene scene(window, faces.files, faces.fonts, model, settings,
                     motif.appearance.is_projector);
    motif.pose(scene.view());
    if (motif.stage) {
        motif.stage(scene);
    }
    // The panels learn how high their contents are in the first frames.
    constexpr int frames = 4;
    for (int i = 0; i < frames; ++i) {
        scene.draw(0.0F);
    }
    if (motif.part || motif.is_shut) {
        scene.show_drawing(motif.part.value_or(""), motif.is_shut);
    }
    if (motif.boxes) {
        sim::atomic_write(*motif.boxes, scene.boxes());
    }
    sf::Texture picture;
    if (!picture.create(size.width, size.height)) {
        throw sim::RequestError("a picture of this size cannot be drawn here");
    }
    picture.update(window);
    sim::atomic_write(path, png_bytes(picture.copyToImage()));
    return widget_troubles(scene.widgets().all(), static_cast<float>(size.width),
                           static_cast<float>(size.height));
}

/// The motifs of one look: the bench, its pages where they take turns, and its dialogs.
void add_motifs(std::vector<Motif>& motifs, const std::string& name, const Appearance& look,
                bool has_pages)
{
    const std::vector<std::pair<std::string, Page>> pages{
        {"machine", Page::machine},   {"grade", Page::grade},   {"charts", Page::charts},
        {"controls", Page::controls}, {"faults", Page::faults}, {"run", Page::run},
        {"changes", Page::changes}};
    for (const auto& [title, page] : pages) {
        const bool is_in_panel = page >= Page::controls;
        if (has_pages || is_in_panel) {
            motifs.push_back(
                {name + "-" + title, look, [page = page](BenchView& view) { view.page = page; }});
        }
    }
    motifs.push_back(
        {name + "-settings", look, [](BenchView& view) { view.has_settings_open = true; }});
    motifs.push_back({name + "-keys", look, [](BenchView& view) { view.has_keys_open = true; }});
}

/// The builder's pages.
void add_builder(std::vector<Motif>& motifs, const std::string& name, const Appearance& look)
{
    for (std::size_t page = 0; page <= static_cast<std::size_t>(BuilderPage::card); ++page) {
        motifs.push_back({.name = name + "-builder-" + std::to_string(page),
                          .appearance = look,
                          .stage = [page](BenchScene& scene) {
                              scene.view().wants_builder = true;
                              scene.builder().view().page = static_cast<BuilderPage>(page);
                          }});
    }
}

void add_order_motifs(std::vector<Motif>& motifs, const std::string& name, const Appearance& look,
                      bool has_pages, const std::vector<OrderShot>& shots)
{
    for (const OrderShot& shot : shots) {
        if (has_pages || !shot.is_compact_only) {
            motifs.push_back(
                {.name = name + "-order-" + shot.name, .appearance = look, .stage = shot.stage});
        }
    }
}

/// Everything that is looked through: both languages at the sizes that must do.
std::vector<Motif> all_motifs(const std::vector<OrderShot>& orders)
{
    std::vector<Motif> motifs;
    for (const Language& language : languages()) {
        const auto look = [&](unsigned width, unsigned height, Ground ground, int percent) {
            return Appearance{.ground = ground,
                              .size = PixelSize{width, height},
                              .scale_percent = percent,
                              .language = language.id,
                              .units = language.id == "en" ? UnitSet::si : UnitSet::us_customary};
        };
        const std::string id = language.id + "-";
        add_motifs(motifs, id + "1280x720", look(1280, 720, Ground::paper, 100), false);
        add_motifs(motifs, id + "1366x768-board", look(1366, 768, Ground::blackboard, 100), false);
        add_motifs(motifs, id + "1920x1080", look(1920, 1080, Ground::paper, 100), false);
        add_motifs(motifs, id + "1024x600", look(1024, 600, Ground::paper, 100), false);
        add_motifs(motifs, id + "1280x720-200", look(1280, 720, Ground::paper, 200), true);
        add_motifs(motifs, id + "1920x1080-200-board", look(1920, 1080, Ground::blackboard, 200),
                   false);
        add_builder(motifs, id + "1280x720", look(1280, 720, Ground::paper, 100));
        add_builder(motifs, id + "1280x720-200", look(1280, 720, Ground::paper, 200));
        add_builder(motifs, id + "1366x768-board", look(1366, 768, Ground::blackboard, 100));
        add_order_motifs(motifs, id + "1280x720", look(1280, 720, Ground::paper, 100), false,
                         orders);
        add_order_motifs(motifs, id + "1280x720-200", look(1280, 720, Ground::paper, 200), true,
                         orders);
        add_order_motifs(motifs, id + "1920x1080-board", look(1920, 1080, Ground::blackboard, 100),
                         false, orders);
        Appearance projected = look(1280, 720, Ground::paper, 100);
        projected.is_projector = true;
        add_order_motifs(motifs, id + "1280-projector", projected, true, orders);
        motifs.push_back({.name = id + "1280x720-outside",
                          .appearance = look(1280, 720, Ground::paper, 100),
                          .is_shut = true});
        for (const PixelSize size : {PixelSize{1280, 720}, PixelSize{1920, 1080}}) {
            Appearance projector = look(size.width, size.height, Ground::paper, 100);
            projector.is_projector = true;
            motifs.push_back({id + std::to_string(size.width) + "-projector", projector});
            projector.ground = Ground::blackboard;
            projector.scale_percent = 200;
            motifs.push_back({id + std::to_string(size.width) + "-200-projector-board", projector});
        }
    }
    return motifs;
}

} // namespace

namespace {

/// The screen of a work order that is asked for.
OrderShot order_shot(const ShotRequest& request)
{
    if (request.scene == shelf_scene) {
        return shelf_shot();
    }
    if (!request.order) {
        throw sim::RequestError("the scene order wants --order, a file or an id");
    }
    shop::Workshops workshops(sim::assets_folder());
    const auto order = shop::load_order(shop::order_file(*request.order), workshops);
    std::vector<std::string> names;
    const std::string wanted = request.page.value_or("checks");
    for (OrderShot& shot : order_shots(play_order(order, request.actions, wanted == "marks"))) {
        if (shot.name == wanted) {
            return shot;
        }
        names.push_back(shot.name);
    }
    throw sim::RequestError("an order has no page " + sim::in_quotes(wanted) +
                            sim::choices_hint(wanted, names));
}

int shoot_order(const ShotRequest& request)
{
    const OrderShot shot = order_shot(request);
    auto rig = std::make_shared<const sim::Rig>(sim::load_rig(Settings().machine));
    BenchModel model(std::move(rig));
    picture_of(model, {.name = shot.name, .appearance = request.appearance, .stage = shot.stage},
               request.picture);
    return 0;
}

/// The screens of the first order there is for a machine; the shelf where there is none.
std::vector<OrderShot> order_shots_for(const std::string& rig)
{
    shop::Workshops workshops(sim::assets_folder());
    for (const std::string& path : shop::json_files(sim::assets_folder() + "/orders")) {
        const auto order = shop::load_order(path, workshops);
        if (order->workshop->rig->id == rig) {
            return order_shots(play_order(order, std::nullopt, true));
        }
    }
    return {shelf_shot()};
}

} // namespace

int take_shot(const ShotRequest& request)
{
    const std::vector<std::string> scenes{std::string(bench_scene), std::string(order_scene),
                                          std::string(shelf_scene)};
    if (std::ranges::find(scenes, request.scene) == scenes.end()) {
        throw sim::RequestError("there is no scene " + sim::in_quotes(request.scene) +
                                sim::choices_hint(request.scene, scenes));
    }
    require_display();
    sf::err().rdbuf(nullptr); // our own line says what is wrong
    if (request.scene != bench_scene) {
        return shoot_order(request);
    }
    const std::string id = request.rig     ? *request.rig
                           : request.sheet ? sim::rig_of_run_sheet(*request.sheet)
                                           : Settings().machine;
    auto rig = std::make_shared<const sim::Rig>(sim::load_rig(id));
    const sim::RunSheet sheet =
        request.sheet ? sim::load_run_sheet(*request.sheet, *rig) : rig->default_sheet;
    const auto model = model_at(std::move(rig), sheet, request.at_seconds);
    picture_of(*model,
               {.name = std::string(bench_scene),
                .appearance = request.appearance,
                .part = request.part,
                .is_shut = request.is_shut,
                .boxes = request.boxes},
               request.picture);
    return 0;
}

int take_pictures(const PicturesRequest& request)
{
    require_display();
    sf::err().rdbuf(nullptr); // our own line says what is wrong
    make_folder_for(request.folder + "/");
    std::size_t count = 0;
    for (const std::string& id : request.rig ? std::vector{*request.rig} : sim::rig_ids()) {
        auto rig = std::make_shared<const sim::Rig>(sim::load_rig(id));
        // Under load, the trimmer upside down: everything moves, and all words stand.
        const double seconds = 0.8 * rig->default_length;
        const sim::RunSheet& sheet = rig->default_sheet;
        const auto model = model_at(rig, sheet, seconds);
        for (const Motif& motif : all_motifs(order_shots_for(id))) {
            const std::string path = request.folder + "/" + id + "-" + motif.name + ".png";
            for (const std::string& trouble : picture_of(*model, motif, path)) {
                std::cout << path << ": " << trouble << '\n' << std::flush;
                ++count;
            }
        }
    }
    return count == 0 ? 0 : 1;
}

} // namespace scenes
