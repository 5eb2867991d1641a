#pragma once

#include <SFML/System/Vector2.hpp>

#include <cmath>

namespace scenes {

inline float dot_product(sf::Vector2f a, sf::Vector2f b)
{
    return a.x * b.x + a.y * b.y;
}

inline float cross_product(sf::Vector2f a, sf::Vector2f b)
{
    return a.x * b.y - a.y * b.x;
}

inline float length(sf::Vector2f a)
{
    return std::sqrt(dot_product(a, a));
}

/// The vector at length one; a vanishing vector stays zero.
inline sf::Vector2f unit_vector(sf::Vector2f a)
{
    const float size = length(a);
    return size > 1e-6F ? a / size : sf::Vector2f{};
}

/// A quarter turn, clockwise on the screen.
inline sf::Vector2f turned(sf::Vector2f a)
{
    return {-a.y, a.x};
}

} // namespace scenes
