#pragma once

#include "scenes/bench/bench_drips.hpp"
#include "scenes/bench/bench_layout.hpp"
#include "scenes/bench/section_drawing.hpp"
#include "scenes/bench/section_names.hpp"
#include "scenes/present/fuel_path.hpp"
#include "scenes/present/machine_view.hpp"
#include "scenes/view/grade_line.hpp"
#include "scenes/view/picture.hpp"

#include <SFML/Graphics/RenderTarget.hpp>

#include <optional>
#include <vector>

namespace scenes {

/// The section drawing, the standpipes beside it and the grade line above it.
class DrawingBoard {
public:
    DrawingBoard(const Fonts& fonts, const sim::Simulator& machine);

    struct Scene {
        const BenchLayout& layout;
        const Look& look;
        sim::Simulator& machine;
        const std::vector<double>& values;   ///< its readings now
        int run_number = 0;                  ///< another one is another machine
        std::optional<FuelHeads> heads = {}; ///< where standpipes and grade line are laid out
        std::optional<FuelHeads> twin_heads = {};
        double seconds = 0.0;        ///< moves the flow marks
        float frame_seconds = 0.0F;  ///< since the frame before; moves the camera
        bool is_open = true;         ///< the machine is cut open; else only its outside shows
        bool reduces_motion = false; ///< the camera jumps
        std::optional<double> cord_in_hand = {}; ///< metres that a hand holds out of the housing
    };
    void draw(sf::RenderTarget& target, const Scene& scene);

    /// Enlarges about a pixel, or moves by pixels; `show_whole` undoes both.
    void zoom(double factor, sf::Vector2f about);
    void pan(sf::Vector2f pixels);
    void show_whole();
    /// Shows the part at a pixel large, or the whole drawing when it already is or there is none.
    void frame_part(sf::Vector2f at);
    /// throws:  RequestError when the drawing has no part of this name
    void frame_part_named(std::string_view name);
    /// The part at this pixel shows its card; nothing while the pointer is elsewhere.
    void point_at(std::optional<sf::Vector2f> at);
    /// Points at the next or previous part by key.
    void point_at_next(int step);
    /// Frames the part pointed at by key.
    void frame_pointed();
    /// Where the drawing lies in the window.
    [[nodiscard]] const sf::FloatRect& area() const { return area_; }
    [[nodiscard]] const Camera& camera() const { return camera_; }

    void shed_drops(double kg) { drips_.shed(kg); }
    [[nodiscard]] std::size_t drop_count() const { return drips_.count(); }
    /// What text stands where in the drawing, for tests.
    [[nodiscard]] std::vector<SectionNames::Shown> names() const { return names_.shown(section_); }
    [[nodiscard]] const Text& notes() const { return still_text_; }
    [[nodiscard]] const Text& figures() const { return figures_; }

private:
    void frame_camera(const Scene& scene);
    void move_camera(const Scene& scene);
    [[nodiscard]] Camera whole_camera() const;
    void frame_mark(const Mark& mark, Place place);
    [[nodiscard]] std::optional<std::size_t> mark_at(sf::Vector2f at) const;
    void draw_section(sf::RenderTarget& target, const Scene& scene);
    void draw_names(sf::RenderTarget& target, const Scene& scene,
                    const SectionDrawing::Canvas& canvas, const SectionDrawing::State& state);
    void draw_heads(sf::RenderTarget& target, const Scene& scene);
    void draw_standpipes(const Scene& scene, const FuelHeads& heads, const FuelHeads* twin);
    void draw_grade(const Scene& scene, const FuelHeads& heads, const FuelHeads* twin);

    SectionDrawing section_;
    BenchDrips drips_;
    MachineView view_;
    int run_number_ = -1;
    Camera camera_{{}, {}, 1.0};
    Camera goal_{{}, {}, 1.0}; ///< where the camera is going
    bool is_whole_ = true;     ///< or is to be
    bool is_moving_ = false;
    float rested_ = 0.0F; ///< seconds since the camera came to rest
    bool has_still_ = false;
    bool has_names_ = false;
    bool is_open_ = true;
    std::optional<sf::Vector2f> pointer_;
    std::optional<std::size_t> chosen_; ///< the mark pointed at by key
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
    SectionNames names_;
    std::string head_unit_; ///< of grade line and standpipes
    std::string loss_unit_; ///< the unit as a cliff of the grade line names it
};

} // namespace scenes
