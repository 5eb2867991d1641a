#pragma once

#include <SFML/Graphics/Image.hpp>

#include <string>

namespace scenes {

/// A picture as the bytes of a PNG file.
///
/// throws:  RequestError when it cannot be prepared
std::string png_bytes(const sf::Image& picture);

} // namespace scenes
