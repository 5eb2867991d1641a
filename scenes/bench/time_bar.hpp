#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/view/mesh.hpp"

#include <SFML/Graphics/RenderTarget.hpp>

namespace scenes {

/// The rail of time: from the start to how far the run has been, with a knob at the moment that is
/// shown, and marks where something was done and where branches leave.
class TimeBar {
public:
    explicit TimeBar(const Fonts& fonts) : text_(fonts) {}

    /// What it takes of the window's height, in pixels.
    [[nodiscard]] static float height(const Look& look) { return look.whole(34.0F); }

    /// Lets the knob be dragged and reached by the keyboard.
    void show_handle(BenchDesk& desk, const sf::FloatRect& box);
    void draw(sf::RenderTarget& target, const BenchDesk& desk, const sf::FloatRect& box);

private:
    struct Rail {
        float left = 0.0F;
        float width = 1.0F;
        double end = 1.0; ///< s
        [[nodiscard]] float x_of(double time) const;
        [[nodiscard]] double time_at(float x) const;
    };
    [[nodiscard]] Rail rail(const BenchDesk& desk, const sf::FloatRect& box) const;
    void draw_marks(const BenchDesk& desk, const Rail& rail, float y);

    Mesh mesh_;
    Text text_;
};

} // namespace scenes
