#include "scenes/ui/typefaces.hpp"

#include "scenes/view/built_in_font.hpp"

#include <backends/imgui_impl_opengl2.h>
#include <imgui.h>
#include <imgui_freetype.h>

#include <ft2build.h>
#include FT_FREETYPE_H

namespace scenes {
namespace {

/// Letters of western Europe, figures and signs of units, arrows, marks: what our fonts hold.
constexpr std::array<ImWchar, 21> glyph_ranges{
    0x0020, 0x017F, 0x0391, 0x03C9, 0x2010, 0x2042, 0x2070, 0x208E, 0x2103, 0x2126, 0x2153,
    0x215B, 0x2190, 0x2199, 0x2200, 0x2265, 0x25B6, 0x25CE, 0x2713, 0x2713, 0};

/// The line height at which a font file comes out at a given em height: the library counts the
/// former, the rest of the program the latter.
float line_height(const std::filesystem::path& file, float em)
{
    FT_Library library = nullptr;
    FT_Face face = nullptr;
    float height = em;
    const std::span<const unsigned char> spare = built_in_font();
    if (FT_Init_FreeType(&library) == 0) {
        const bool is_open =
            file.empty() ? FT_New_Memory_Face(library, spare.data(),
                                              static_cast<FT_Long>(spare.size()), 0, &face) == 0
                         : FT_New_Face(library, file.c_str(), 0, &face) == 0;
        if (is_open) {
            height = em * static_cast<float>(face->ascender - face->descender) /
                     static_cast<float>(face->units_per_EM);
        }
        FT_Done_FreeType(library);
    }
    return height;
}

struct Setting {
    Face face;
    float em;
};

Setting setting(Type type, const Look& look)
{
    switch (type) {
    case Type::small:
        return {Face::regular, look.small()};
    case Type::body:
        return {Face::regular, look.body()};
    case Type::bold:
        return {Face::bold, look.body()};
    case Type::heading:
        return {Face::bold, look.heading()};
    case Type::mono:
        return {Face::mono, look.body()};
    }
    return {};
}

} // namespace

void Typefaces::load(const FontFiles& files, const Look& look)
{
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
    // The same hinting as SFML's, so that text in panels and in the drawing looks alike.
    atlas.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_ForceAutoHint;
    atlas.Flags |= ImFontAtlasFlags_NoBakedLines | ImFontAtlasFlags_NoMouseCursors;
    for (const Type type : all_types) {
        const auto [face, em] = setting(type, look);
        const std::filesystem::path& file = files.files[static_cast<std::size_t>(face)];
        ImFont*& font = fonts_[static_cast<std::size_t>(type)];
        if (file.empty()) {
            const std::span<const unsigned char> spare = built_in_font();
            ImFontConfig config;
            config.FontDataOwnedByAtlas = false; // so nobody writes to it
            font = atlas.AddFontFromMemoryTTF(const_cast<unsigned char*>(spare.data()),
                                              static_cast<int>(spare.size()), line_height(file, em),
                                              &config, glyph_ranges.data());
        } else {
            font = atlas.AddFontFromFileTTF(file.c_str(), line_height(file, em), nullptr,
                                            glyph_ranges.data());
        }
    }
    ImGui::GetIO().FontDefault = font(Type::body);
    ImGui_ImplOpenGL2_DestroyFontsTexture();
    ImGui_ImplOpenGL2_CreateFontsTexture();
}

} // namespace scenes
