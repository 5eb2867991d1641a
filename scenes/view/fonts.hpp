#pragma once

#include <SFML/Graphics/Font.hpp>

#include <array>
#include <filesystem>
#include <string>
#include <vector>

namespace scenes {

/// The four faces of the program. Figures have equal widths in all of them, so that readings do not
/// jump; in the mono faces every sign has.
enum class Face { regular, bold, mono, mono_bold };
inline constexpr std::array<Face, 4> all_faces{Face::regular, Face::bold, Face::mono,
                                               Face::mono_bold};

/// The file that holds a face, inside the folder of fonts.
std::filesystem::path font_file(const std::filesystem::path& folder, Face face);

/// Whether a file exists and FreeType can read it as a font.
bool is_font(const std::filesystem::path& file);

/// For each face the file to read it from. A face that cannot be read borrows another one's file,
/// first in the folder, then where distributions install fonts; an empty path means that none at
/// all was found. Each substitution is told in `complaints`, one line each.
struct FontFiles {
    std::array<std::filesystem::path, 4> files;
    std::vector<std::string> complaints;
};
FontFiles find_font_files(const std::filesystem::path& folder);

/// The faces, ready to draw with.
class Fonts {
public:
    explicit Fonts(const FontFiles& files);

    [[nodiscard]] const sf::Font& face(Face face) const
    {
        return faces_[static_cast<std::size_t>(face)];
    }
    /// False when not one font could be read: nothing must be drawn with these.
    [[nodiscard]] bool is_usable() const { return is_usable_; }

private:
    std::array<sf::Font, 4> faces_;
    bool is_usable_ = true;
};

} // namespace scenes
