#include "scenes/bench/chart_board.hpp"

#include "scenes/present/readout.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/handle.hpp"
#include "scenes/view/png.hpp"
#include "sim/error.hpp"

#include <SFML/Graphics/RenderTexture.hpp>

#include <algorithm>
#include <numeric>

// What a person does with a chart: point at a time, choose its readings, take its picture.

namespace scenes {
namespace {

/// Of an exported picture, in pixels, and its text: fit for a page or a slide.
const sf::Vector2f picture_size{1280.0F, 640.0F};
constexpr float picture_scale = 1.5F;

} // namespace

std::string ChartBoard::title(std::size_t chart) const
{
    const ChartChoice& choice = set_.charts()[chart];
    return choice.lines.size() == 1 ? capitalised(choice.lines.front().title)
                                    : filled(words::chart, {std::to_string(chart + 1)});
}

void ChartBoard::show_plot(BenchDesk& desk, std::size_t chart)
{
    const StripChart& strip = sheets_[chart]->strip;
    const std::string name = filled(words::chart_plot, {title(chart), std::to_string(chart + 1)});
    const Handle plot = handle(desk.ui, {.name = name,
                                         .value = clock_text(desk.model.seconds()),
                                         .box = strip.plot(),
                                         .takes_arrows = true});
    if (plot.steps != 0) {
        constexpr double steps_across = 100.0;
        desk.model.go_to(desk.model.seconds() + plot.steps * span_ / steps_across);
    } else if (plot.end != 0) {
        desk.model.go_to(plot.end > 0 ? window_.to : window_.from);
    }
    if (plot.is_hovered || plot.is_held) {
        const double time = strip.time_at(desk.pointer.x);
        pointed_at_ = std::clamp(time, window_.from, window_.to);
        if (plot.is_held) {
            desk.model.go_to(*pointed_at_);
        }
    }
}

void ChartBoard::open_choice(std::size_t chart, const BenchModel& model)
{
    if (chart >= set_.charts().size()) {
        return;
    }
    choosing_.is_open = true;
    choosing_.chart = chart;
    choosing_.search.clear();
    choosing_.selected = set_.charts()[chart].lines.front().reading;
    // Those that are shown come first; the order holds while the dialog is open.
    choosing_.order.resize(model.run().values().size());
    std::iota(choosing_.order.begin(), choosing_.order.end(), std::size_t{0});
    std::ranges::stable_partition(choosing_.order, [this, chart](std::size_t reading) {
        return set_.charts()[chart].has(reading);
    });
}

std::string ChartBoard::png(std::size_t chart, const BenchDesk& desk)
{
    Sheet sheet(fonts_);
    sheet.box = {0.0F, 0.0F, picture_size.x, picture_size.y};
    const Look look{desk.ui.look().theme, picture_scale};
    write_chart(sheet, chart, desk, look);
    sf::RenderTexture texture;
    if (!texture.create(static_cast<unsigned>(picture_size.x),
                        static_cast<unsigned>(picture_size.y))) {
        throw sim::RequestError("a picture of this size cannot be drawn here");
    }
    texture.clear(to_sfml(look.theme.ground));
    texture.draw(sheet.mesh);
    texture.draw(sheet.text);
    texture.display();
    return png_bytes(texture.getTexture().copyToImage());
}

} // namespace scenes
