#pragma once

#include "scenes/view/materials.hpp"
#include "scenes/view/mesh.hpp"
#include "scenes/view/text.hpp"
#include "scenes/view/theme.hpp"

#include <optional>
#include <string_view>

namespace scenes {

/// A thin glass tube whose column shows the pressure at a tap point.
///
/// unit: low, high, column and twin in the shown unit of head (mm of fuel, say); sizes in pixels
struct Standpipe {
    Point foot; ///< middle of the tube's lower end
    float height = 160.0F;
    float bore = 12.0F;
    float width = 70.0F; ///< room for glass, scale and the words above, from the glass on
    double low = 0.0;    ///< head at the foot
    double high = 100.0;
    double column = 0.0;
    std::optional<double> twin; ///< the healthy machine's column: a mark beside the tube
    std::string_view name;      ///< written above the tube, above the value
    int decimals = 0;
    bool has_numbers = true; ///< at the scale marks
    float phase = 0.0F;      ///< travel of the liquid marks
};

/// Draws the tube with its scale and column. A column off the scale fills (or empties) the tube and
/// an arrow beside its end says which way the value, still written in figures, lies.
///
/// Returns the box that holds everything drawn.
sf::FloatRect draw_standpipe(Mesh& mesh, Text& text, const Look& look, const Standpipe& pipe);

} // namespace scenes
