#pragma once

#include "scenes/view/fonts.hpp"
#include "scenes/view/theme.hpp"

#include <array>

struct ImFont;

namespace scenes {

/// The kinds of type that widgets are set in.
enum class Type { small, body, bold, heading, mono };
inline constexpr std::array<Type, 5> all_types{Type::small, Type::body, Type::bold, Type::heading,
                                               Type::mono};

/// The widget library's fonts at one scale.
class Typefaces {
public:
    /// Loads all kinds at the look's scale and forgets those loaded before.
    void load(const FontFiles& files, const Look& look);

    [[nodiscard]] ImFont* font(Type type) const { return fonts_[static_cast<std::size_t>(type)]; }

private:
    std::array<ImFont*, all_types.size()> fonts_{};
};

} // namespace scenes
