#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/bench/section_hands.hpp"
#include "scenes/present/hand_moves.hpp"
#include "scenes/ui/handle.hpp"
#include "scenes/view/mesh.hpp"

#include <optional>
#include <string>
#include <vector>

namespace scenes {

class DrawingBoard;

/// The handles in the drawing: cord, bulb, tap, cap, and the dial that tips the machine.
class HandBoard {
public:
    explicit HandBoard(const sim::Rig& rig);

    /// Makes the handles and does what they are moved to.
    ///
    /// unit: seconds since the last frame
    void show(BenchDesk& desk, const DrawingBoard& drawing, float seconds);
    void draw(sf::RenderTarget& target) const;
    /// Whether a handle is at a pixel of the window, so that a drag there moves no drawing.
    [[nodiscard]] bool is_over(const DrawingBoard& drawing, sf::Vector2f pixel,
                               const Look& look) const;
    /// Metres of cord that a hand holds out of the housing; nothing when none does.
    [[nodiscard]] std::optional<double> cord_in_hand() const
    {
        return cord_ && cord_->is_held() ? std::optional(cord_->out()) : std::nullopt;
    }
    /// Tips the machine by degrees more, or turns the cap, as keys do.
    static void tip(BenchDesk& desk, double degrees);
    static void turn_cap(BenchDesk& desk) { turn_over(desk, "cap"); }
    /// Turns a control that the machine has to its other end.
    static void turn_over(BenchDesk& desk, const std::string& control);

private:
    /// The doing by which a hand draws the cord bit by bit.
    static constexpr std::string_view draw_cord = "draw_cord";
    static constexpr float least_drag = 4.0F; ///< pixels; less is a click

    static double position(const BenchDesk& desk, std::string_view control);
    void show_hand(BenchDesk& desk, const Hand& hand, const Camera& camera, float seconds);
    void work_cord(BenchDesk& desk, const Hand& hand, const Camera& camera, const Handle& handle,
                   float seconds);
    static void work_bulb(BenchDesk& desk, const Handle& handle);
    void work_tap(BenchDesk& desk, const Hand& hand, const Camera& camera, const Handle& handle);
    void show_tilt(BenchDesk& desk, const sf::FloatRect& area);
    void draw_tilt(const Look& look, sf::Vector2f middle, double degrees, bool is_lit);
    void set(BenchDesk& desk, const std::string& control, double to, bool is_drag);

    std::vector<Hand> hands_;
    std::optional<CordPull> cord_;
    Mesh mesh_;
    std::string dragged_;     ///< the control that a drag moves
    bool has_posted_ = false; ///< in this drag
    double tilt_from_ = 0.0;
    sf::Vector2f taken_at_;
};

} // namespace scenes
