#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/view/picture.hpp"
#include "scenes/view/strip_chart.hpp"

#include <SFML/Graphics/RenderTarget.hpp>

#include <array>
#include <string>
#include <vector>

namespace scenes {

/// The three strip charts, and the choice of what they show.
class ChartBoard {
public:
    ChartBoard(const Fonts& fonts, const BenchModel& model);

    /// Draws the charts into the window; one of them anew, the others as they were, but all when
    /// `is_complete` asks for it or the layout has changed.
    void draw(sf::RenderTarget& target, const BenchLayout& layout, const BenchDesk& desk,
              bool is_complete);

    /// The most lines that any chart has.
    [[nodiscard]] std::size_t most_lines() const;

    /// Puts a handle on every chart's head that opens the choice of its readings.
    void show_handles(BenchDesk& desk, const BenchLayout& layout);
    void open_choice(std::size_t chart);
    /// The dialog that chooses the readings, while it is open.
    void show_choice(BenchDesk& desk);

private:
    struct Line {
        std::size_t reading;
        std::string title;
        Readout readout;
    };
    struct Chart {
        std::vector<Line> lines;
        std::string title;
        StripChart strip;
        Picture picture;
        Mesh mesh;
    };

    void add(const BenchModel& model, std::size_t chart, std::size_t reading);
    void toggle_reading(const BenchModel& model, std::size_t reading);
    /// Names everything again after a change of language.
    void name_lines(const BenchModel& model);
    void take(std::size_t chart, const BenchLayout& layout, const BenchDesk& desk);
    void show_readings(BenchDesk& desk);
    [[nodiscard]] bool is_shown(std::size_t chart, std::size_t reading) const;

    std::array<Chart, 3> charts_;
    std::vector<Text> texts_; ///< one for each chart
    std::vector<ChartTrace> traces_;
    std::array<sf::FloatRect, 3> boxes_;
    std::string_view theme_id_;
    int wording_age_ = 0;
    std::size_t next_ = 0;
    std::size_t frame_ = 0;

    bool is_choosing_ = false;
    std::size_t choosing_ = 0;
    std::string search_;
    std::size_t selected_ = 0;
    std::vector<std::size_t> order_; ///< of the readings in the dialog
};

} // namespace scenes
