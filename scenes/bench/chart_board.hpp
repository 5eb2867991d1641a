#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/present/chart_set.hpp"
#include "scenes/view/picture.hpp"
#include "scenes/view/strip_chart.hpp"

#include <SFML/Graphics/RenderTarget.hpp>

#include <optional>
#include <string>
#include <vector>

namespace scenes {

/// The strip charts: their places, the span of time they show, the moment they point at.
class ChartBoard {
public:
    ChartBoard(const Fonts& fonts, const BenchModel& model);

    /// Draws the charts into the window; one of them anew, the others as they were, but all when
    /// `is_complete` asks for it or what they show has changed.
    void draw(sf::RenderTarget& target, const BenchLayout& layout, const BenchDesk& desk,
              bool is_complete);

    /// The most lines that any chart has.
    [[nodiscard]] std::size_t most_lines() const;

    /// Puts handles on every chart: on its head one that opens the choice of its readings, on its
    /// plot one that shows the moment under the pointer.
    void show_handles(BenchDesk& desk, const BenchLayout& layout);
    /// Shows a reading in some chart, and a moment in all of them.
    void show(std::size_t reading);

    /// Shows more or less time; a factor below 1 shows less.
    void zoom_time(double factor);
    /// Whether a pixel lies on a chart.
    [[nodiscard]] bool has_point(sf::Vector2f at) const;

    [[nodiscard]] ChartSet& set() { return set_; }
    /// Forgets the charts' axes and draws all anew: what they show has changed.
    void refresh();

    struct Window {
        double from = 0.0; ///< s
        double to = 60.0;
    };
    [[nodiscard]] const Window& window() const { return window_; }
    /// A chart as the picture of a page's size, in the bytes of a PNG file.
    ///
    /// throws:  RequestError when it cannot be prepared
    [[nodiscard]] std::string png(std::size_t chart, const BenchDesk& desk);

    /// The chart whose readings are chosen or that is exported, while a dialog does so.
    struct Choosing {
        bool is_open = false;
        bool is_exporting = false;
        std::size_t chart = 0;
        std::string search;
        std::size_t selected = 0;
        std::vector<std::size_t> order; ///< of the readings in the list
        std::string path;
        std::string trouble;
    };
    [[nodiscard]] Choosing& choosing() { return choosing_; }
    void open_choice(std::size_t chart, const BenchModel& model);

    /// How many charts there is room for.
    [[nodiscard]] std::size_t room() const { return room_; }

private:
    struct Sheet {
        explicit Sheet(const Fonts& fonts) : text(fonts) {}
        sf::FloatRect box;
        StripChart strip;
        Picture picture;
        Mesh mesh;
        Text text;
    };

    void lay_out(const BenchLayout& layout, const Look& look);
    void follow_time(const BenchDesk& desk);
    void draw_chart(std::size_t chart, const BenchDesk& desk);
    void write_chart(Sheet& sheet, std::size_t chart, const BenchDesk& desk, const Look& look);
    void show_plot(BenchDesk& desk, std::size_t chart);
    [[nodiscard]] std::string title(std::size_t chart) const;

    const Fonts& fonts_;
    ChartSet set_;
    std::vector<std::unique_ptr<Sheet>> sheets_; ///< one for each chart
    std::vector<ChartTrace> traces_;
    std::vector<ChartAxis> axes_;
    Window window_;
    double span_ = 0.0;            ///< s
    std::size_t chosen_span_ = 99; ///< the choice in the panel that `span_` came from
    std::optional<double> pointed_at_;
    std::optional<double> drawn_pointed_at_;
    sf::FloatRect area_;
    std::size_t room_ = 1;
    std::string_view theme_id_;
    int wording_age_ = 0;
    bool is_stale_ = true;
    std::size_t next_ = 0;
    std::size_t frame_ = 0;
    Choosing choosing_;
};

} // namespace scenes
