#pragma once

#include "scenes/bench/bench_layout.hpp"
#include "scenes/bench/section_drawing.hpp"
#include "scenes/present/bench_model.hpp"
#include "scenes/present/machine_view.hpp"
#include "scenes/view/grade_line.hpp"
#include "scenes/view/picture.hpp"

#include <SFML/Graphics/RenderTarget.hpp>

namespace scenes {

/// The section drawing, the standpipes beside it and the grade line above it.
class DrawingBoard {
public:
    DrawingBoard(const Fonts& fonts, const BenchModel& model);

    struct Scene {
        const BenchLayout& layout;
        const Look& look;
        BenchModel& model;
        bool shows_twin = true;
        double seconds = 0.0; ///< moves the flow marks
    };
    void draw(sf::RenderTarget& target, const Scene& scene);

    /// Enlarges about a pixel, or moves by pixels; `show_whole` undoes both.
    void zoom(double factor, sf::Vector2f about);
    void pan(sf::Vector2f pixels);
    void show_whole() { is_framed_ = false; }
    /// Where the drawing lies in the window.
    [[nodiscard]] const sf::FloatRect& area() const { return area_; }

private:
    void frame_camera(const Scene& scene);
    void draw_section(sf::RenderTarget& target, const Scene& scene);
    void draw_standpipes(const Scene& scene, const FuelHeads& heads, const FuelHeads* twin);
    void draw_grade(const Scene& scene, const FuelHeads& heads, const FuelHeads* twin);

    SectionDrawing section_;
    MachineView view_;
    int run_number_ = -1;
    Camera camera_{{}, {}, 1.0};
    bool is_framed_ = false;
    bool has_still_ = false;
    sf::FloatRect area_;
    std::string_view theme_id_;
    float scale_ = 0.0F;
    int wording_age_ = 0;

    Picture still_;
    Mesh still_mesh_;
    Text still_text_;
    Mesh mesh_;
    Text text_;
    Mesh instruments_;
    Text figures_;
    GradeLine grade_;
    std::string head_unit_; ///< of grade line and standpipes
};

} // namespace scenes
