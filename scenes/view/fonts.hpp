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

/// For each face the file to read it from. A face that cannot be read borrows another one's file;
/// an empty path stands for the font that is part of the program.
struct FontFiles {
    std::array<std::filesystem::path, 4> files;
    std::vector<std::string> unreadable; ///< the files that others stand in for
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
    /// False when not even the font of the program itself could be read: nothing must be drawn.
    [[nodiscard]] bool is_usable() const { return is_usable_; }

private:
    std::array<sf::Font, 4> faces_;
    bool is_usable_ = true;
};

} // namespace scenes
