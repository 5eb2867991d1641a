#include "scenes/view/fonts.hpp"

#include "scenes/view/built_in_font.hpp"

#include <ft2build.h>
#include FT_FREETYPE_H

#include <optional>

namespace scenes {
namespace {

/// The first readable file of those that may stand in for a face.
std::optional<std::filesystem::path> find_stand_in(const std::filesystem::path& folder, Face face)
{
    // A mono face is best replaced by the other mono one: columns of figures stay in line.
    const bool is_mono = face == Face::mono || face == Face::mono_bold;
    const std::array order = is_mono ? std::array{Face::mono, Face::mono_bold, Face::regular}
                                     : std::array{Face::regular, Face::bold, Face::mono};
    for (const Face other : order) {
        const std::filesystem::path file = font_file(folder, other);
        if (is_font(file)) {
            return file;
        }
    }
    return std::nullopt;
}

} // namespace

std::filesystem::path font_file(const std::filesystem::path& folder, Face face)
{
    switch (face) {
    case Face::regular:
        return folder / "B612-Regular.otf";
    case Face::bold:
        return folder / "B612-Bold.otf";
    case Face::mono:
        return folder / "B612Mono-Regular.otf";
    case Face::mono_bold:
        return folder / "B612Mono-Bold.otf";
    }
    return {};
}

bool is_font(const std::filesystem::path& file)
{
    std::error_code ignored;
    if (!std::filesystem::is_regular_file(file, ignored)) {
        return false;
    }
    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) != 0) {
        return false;
    }
    FT_Face face = nullptr;
    const bool is_readable = FT_New_Face(library, file.c_str(), 0, &face) == 0 &&
                             FT_IS_SCALABLE(face) && face->units_per_EM > 0;
    FT_Done_FreeType(library);
    return is_readable;
}

FontFiles find_font_files(const std::filesystem::path& folder)
{
    FontFiles found;
    for (const Face face : all_faces) {
        const std::filesystem::path wanted = font_file(folder, face);
        std::filesystem::path& file = found.files[static_cast<std::size_t>(face)];
        if (is_font(wanted)) {
            file = wanted;
        } else {
            file = find_stand_in(folder, face).value_or(std::filesystem::path());
            found.unreadable.push_back(wanted.string());
        }
    }
    return found;
}

Fonts::Fonts(const FontFiles& files)
{
    const std::span<const unsigned char> spare = built_in_font();
    for (const Face face : all_faces) {
        const auto index = static_cast<std::size_t>(face);
        const std::filesystem::path& file = files.files[index];
        const bool is_loaded = !file.empty() && faces_[index].loadFromFile(file.string());
        is_usable_ =
            (is_loaded || faces_[index].loadFromMemory(spare.data(), spare.size())) && is_usable_;
    }
}

} // namespace scenes
