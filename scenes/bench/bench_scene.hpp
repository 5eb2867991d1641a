#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/bench/bench_keys.hpp"
#include "scenes/bench/chart_board.hpp"
#include "scenes/bench/drawing_board.hpp"
#include "scenes/bench/time_bar.hpp"

#include <optional>

namespace scenes {

/// The bench in its window: a machine in section, its gauges, its controls, its faults.
class BenchScene {
public:
    BenchScene(sf::RenderWindow& window, const FontFiles& files, const Fonts& fonts,
               BenchModel& model, const Look& look);

    void handle(const sf::Event& event);
    /// Shows the bench as it is now.
    ///
    /// unit: seconds since the last frame
    void draw(float seconds);
    [[nodiscard]] bool wants_to_quit() const { return view_.wants_to_quit; }
    [[nodiscard]] const WidgetList& widgets() const { return ui_.widgets(); }

private:
    void handle_drawing(const sf::Event& event);
    /// Gets drawing, charts and keys for another machine when there is one on the bench.
    void take_machine();
    void build(const BenchLayout& layout, const sf::FloatRect& time_box);
    void show_wanted_reading();
    void tell_of_branches();
    [[nodiscard]] std::string message() const;
    [[nodiscard]] std::string clock() const;
    /// Breaks the message into lines and gives the height of the line of messages.
    float measure_status(const std::string& message, const std::string& clock);
    /// Width of the longest title of a slider together with its value.
    float widest_row();
    void draw_status(const BenchLayout& layout, const std::string& message,
                     const std::string& clock);
    [[nodiscard]] TextStyle status_style() const;

    sf::RenderWindow& window_;
    const Fonts& fonts_;
    BenchModel& model_;
    BenchView view_;
    Interface ui_;
    Text status_text_;
    TimeBar time_bar_;
    BenchDesk desk_;
    const sim::Rig* rig_ = nullptr; ///< whose section, charts and keys these are
    std::optional<DrawingBoard> drawing_;
    std::optional<ChartBoard> charts_;
    std::optional<BenchKeys> keys_;
    std::optional<sf::Vector2f> drag_from_;
    bool was_frozen_ = false;
    float row_width_ = 0.0F;
    float row_scale_ = 0.0F; ///< the text scale it was measured at
    double shown_seconds_ = -1.0;
    std::size_t branch_count_ = 1;
    double flow_seconds_ = 0.0;
};

} // namespace scenes
