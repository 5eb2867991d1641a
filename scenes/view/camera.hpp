#pragma once

#include <SFML/Graphics/Rect.hpp>
#include <SFML/System/Vector2.hpp>

#include <algorithm>
#include <cmath>

namespace scenes {

/// A place in the drawing plane of a rig.
///
/// unit: metres
/// sign: x to the right, y upwards
struct Place {
    double x = 0.0;
    double y = 0.0;
};

/// The one conversion between metres of the rig and pixels of the screen.
class Camera {
public:
    /// Puts a place at a pixel.
    ///
    /// unit: pixels_per_metre as it says, above 0
    Camera(Place place, sf::Vector2f pixel, double pixels_per_metre)
        : place_(place), pixel_(pixel), pixels_per_metre_(pixels_per_metre)
    {
    }

    /// Shows a rectangle of the rig as large as it goes in a rectangle of the screen, centred.
    ///
    /// valid: both rectangles have an area
    static Camera framing(Place low, Place high, const sf::FloatRect& screen)
    {
        const Place middle{(low.x + high.x) / 2.0, (low.y + high.y) / 2.0};
        const double across = static_cast<double>(screen.width) / (high.x - low.x);
        const double up = static_cast<double>(screen.height) / (high.y - low.y);
        return {middle,
                {screen.left + screen.width / 2.0F, screen.top + screen.height / 2.0F},
                std::min(across, up)};
    }

    [[nodiscard]] double pixels_per_metre() const { return pixels_per_metre_; }

    [[nodiscard]] sf::Vector2f to_pixels(Place place) const
    {
        return {pixel_.x + static_cast<float>((place.x - place_.x) * pixels_per_metre_),
                pixel_.y - static_cast<float>((place.y - place_.y) * pixels_per_metre_)};
    }

    [[nodiscard]] Place to_place(sf::Vector2f pixel) const
    {
        return {place_.x + static_cast<double>(pixel.x - pixel_.x) / pixels_per_metre_,
                place_.y - static_cast<double>(pixel.y - pixel_.y) / pixels_per_metre_};
    }

    /// A length of the rig on the screen.
    [[nodiscard]] float to_pixels(double metres) const
    {
        return static_cast<float>(metres * pixels_per_metre_);
    }

    /// Moves the drawing along with a drag.
    void pan(sf::Vector2f pixels) { pixel_ += pixels; }

    /// Enlarges about a pixel, which keeps showing the same place.
    void zoom(double factor, sf::Vector2f about)
    {
        place_ = to_place(about);
        pixel_ = about;
        pixels_per_metre_ *= factor;
    }

    /// A camera part of the way from this one to another: sizes change by equal factors and a
    /// smooth zoom never seems to hurry.
    ///
    /// unit: share 0 gives this camera, 1 the other
    [[nodiscard]] Camera toward(const Camera& other, double share) const
    {
        const double size =
            pixels_per_metre_ * std::pow(other.pixels_per_metre_ / pixels_per_metre_, share);
        // Place and pixel blend separately: both cameras may have been anchored anywhere.
        const Place place{place_.x + (other.place_.x - place_.x) * share,
                          place_.y + (other.place_.y - place_.y) * share};
        const sf::Vector2f from = to_pixels(place);
        const sf::Vector2f to = other.to_pixels(place);
        return {place, from + (to - from) * static_cast<float>(share), size};
    }

private:
    Place place_;
    sf::Vector2f pixel_;
    double pixels_per_metre_;
};

} // namespace scenes
