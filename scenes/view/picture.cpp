#include "scenes/view/picture.hpp"

#include <SFML/Graphics/Sprite.hpp>

#include <algorithm>
#include <cmath>

namespace scenes {

void Picture::take(const sf::FloatRect& box, Rgba ground,
                   std::initializer_list<const sf::Drawable*> things)
{
    const sf::Vector2u size{static_cast<unsigned>(std::max(1.0F, std::round(box.width))),
                            static_cast<unsigned>(std::max(1.0F, std::round(box.height)))};
    if (texture_.getSize() != size) {
        is_usable_ = texture_.create(size.x, size.y);
    }
    if (!is_usable_) {
        return;
    }
    box_ = {std::round(box.left), std::round(box.top), static_cast<float>(size.x),
            static_cast<float>(size.y)};
    texture_.setView(sf::View(box_));
    texture_.clear({ground.red, ground.green, ground.blue});
    for (const sf::Drawable* thing : things) {
        texture_.draw(*thing);
    }
    texture_.display();
}

void Picture::show(sf::RenderTarget& target) const
{
    if (is_usable_) {
        sf::Sprite sprite(texture_.getTexture());
        sprite.setPosition(box_.left, box_.top);
        target.draw(sprite, sf::BlendNone);
    }
}

} // namespace scenes
