#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/bench/bench_keys.hpp"
#include "scenes/bench/bench_sound.hpp"
#include "scenes/bench/builder_board.hpp"
#include "scenes/bench/chart_board.hpp"
#include "scenes/bench/drawing_board.hpp"
#include "scenes/bench/hand_board.hpp"
#include "scenes/bench/order_board.hpp"

#include "scenes/bench/time_bar.hpp"
#include <SFML/System/Clock.hpp>

#include <optional>

namespace scenes {

/// The bench in its window: a machine in section, its gauges, its controls, its faults.
class BenchScene {
public:
    BenchScene(sf::RenderWindow& window, const FontFiles& files, const Fonts& fonts,
               BenchModel& model, SettingsKeeper& settings, bool is_projector = false);

    /// Lets the engine be heard from now on; without a loudspeaker it says so, once.
    void open_sound();
    void handle(const sf::Event& event);
    /// Shows the bench as it is now.
    ///
    /// unit: seconds since the last frame
    void draw(float seconds);
    /// Shows a part of the drawing large, at once, or the whole without a name; cut open or shut.
    ///
    /// throws:  RequestError when the drawing has no such part
    void show_drawing(std::string_view part, bool is_shut);
    /// Where the drawing and its words stand, as CSV: what, text, left, top, width, height.
    [[nodiscard]] std::string boxes() const;
    /// For measurements: more drops than the machine loses, and how many are on their way.
    ///
    /// unit:    kilograms, at each mouth of a leak
    void shed_drops(double kg) { drawing_->shed_drops(kg); }
    [[nodiscard]] std::size_t drop_count() const { return drawing_->drop_count(); }
    /// What is chosen to be seen, to be changed before a picture is taken.
    [[nodiscard]] BenchView& view() { return view_; }
    /// Whether the window is to close, once nothing is lost by it that somebody would miss.
    [[nodiscard]] bool wants_to_quit();
    /// Work orders: shown in place of the bench, and gone on with.
    [[nodiscard]] bool shows_orders() const { return view_.shows_orders; }
    void advance_orders(double seconds, const OrderDesk::Leave& has_leave)
    {
        orders_.advance(seconds, has_leave);
    }
    [[nodiscard]] OrderBoard& orders() { return orders_; }
    [[nodiscard]] BuilderBoard& builder() { return builder_; }
    [[nodiscard]] const WidgetList& widgets() const { return ui_.widgets(); }

private:
    void handle_drawing(const sf::Event& event);
    void draw_orders(float seconds);
    void draw_builder(float seconds);
    /// The builder, which shows answers, unless somebody works on an order.
    void open_builder();
    /// The builder's order on the student's screen, and back.
    void begin_preview();
    void end_preview();
    /// Gets drawing, charts and keys for another machine when there is one on the bench.
    void take_machine();
    /// Applies settings that have changed, and says what the program does without.
    void take_settings();
    /// Says everything anew after a change of language.
    void take_wording();
    void build(const BenchLayout& layout, const sf::FloatRect& time_box, float seconds);
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
    /// Words for what is heard, at the foot of the drawing.
    void draw_caption(const BenchLayout& layout);

    sf::RenderWindow& window_;
    const Fonts& fonts_;
    BenchModel& model_;
    BenchView view_;
    Interface ui_;
    Text status_text_;
    Text caption_text_;
    Mesh caption_mesh_;
    TimeBar time_bar_;
    BenchDesk desk_;
    OrderBoard orders_;
    BuilderBoard builder_;
    bool is_preview_ = false;       ///< the student's screen shows the builder's order
    const sim::Rig* rig_ = nullptr; ///< whose section, charts and keys these are
    std::optional<DrawingBoard> drawing_;
    std::optional<HandBoard> hands_;
    std::optional<ChartBoard> charts_;
    std::optional<BenchKeys> keys_;
    std::optional<sf::Vector2f> drag_from_;
    BenchSound sound_;
    sf::Clock press_clock_; ///< since the last press on the drawing
    sf::Vector2f press_at_;
    sf::FloatRect panel_; ///< as last laid out
    bool was_frozen_ = false;
    float row_width_ = 0.0F;
    float row_scale_ = 0.0F;        ///< the text scale it was measured at
    int wording_age_ = 0;           ///< of the key map and the measured words
    int settings_age_ = -1;         ///< of the settings that are applied
    float projector_height_ = 0.0F; ///< that the look is made for; 0 outside the projector view
    std::string hint_;              ///< what to try first, in the language of when it was told
    double shown_seconds_ = -1.0;
    std::size_t branch_count_ = 1;
    double flow_seconds_ = 0.0;
};

} // namespace scenes
