#include "scenes/ui/panel_cache.hpp"

#include <SFML/Graphics/Sprite.hpp>
#include <SFML/OpenGL.hpp>

#include <backends/imgui_impl_opengl2.h>
#include <imgui.h>

#include <algorithm>
#include <cstring>

namespace scenes {
namespace {

/// Stirs bytes into a hash, eight at a time.
///
/// source: multiply-xorshift in the manner of common hash finalisers; only speed and spread matter
std::uint64_t stir(std::uint64_t hash, const void* data, std::size_t size)
{
    const char* bytes = static_cast<const char*>(data);
    for (std::size_t at = 0; at < size; at += sizeof(std::uint64_t)) {
        std::uint64_t word = 0;
        std::memcpy(&word, bytes + at, std::min(sizeof word, size - at));
        hash = (hash ^ word) * 0x9E3779B97F4A7C15U;
        hash ^= hash >> 29U;
    }
    return hash;
}

std::uint64_t hash_of(const PanelPicture& panel)
{
    std::uint64_t hash = stir(0, &panel.box, sizeof panel.box);
    for (const ImDrawList* list : panel.lists) {
        hash = stir(hash, list->VtxBuffer.Data,
                    static_cast<std::size_t>(list->VtxBuffer.Size) * sizeof(ImDrawVert));
        hash = stir(hash, list->IdxBuffer.Data,
                    static_cast<std::size_t>(list->IdxBuffer.Size) * sizeof(ImDrawIdx));
        for (const ImDrawCmd& command : list->CmdBuffer) {
            hash = stir(hash, &command.ClipRect, sizeof command.ClipRect);
        }
    }
    return hash;
}

/// SFML and the widget library each leave OpenGL in a state the other does not expect.
void settle_state(sf::RenderTarget& target)
{
    target.resetGLStates();
    glMatrixMode(GL_TEXTURE);
    glLoadIdentity();
    glMatrixMode(GL_MODELVIEW);
}

} // namespace

void draw_lists(std::span<ImDrawList* const> lists, sf::Vector2u size)
{
    std::vector<ImDrawList*> copy(lists.begin(), lists.end());
    ImDrawData data;
    data.Valid = true;
    data.CmdLists = copy.data();
    data.CmdListsCount = static_cast<int>(copy.size());
    for (const ImDrawList* list : lists) {
        data.TotalVtxCount += list->VtxBuffer.Size;
        data.TotalIdxCount += list->IdxBuffer.Size;
    }
    data.DisplayPos = {0.0F, 0.0F};
    data.DisplaySize = {static_cast<float>(size.x), static_cast<float>(size.y)};
    data.FramebufferScale = {1.0F, 1.0F};
    ImGui_ImplOpenGL2_RenderDrawData(&data);
}

bool PanelCache::make_room(sf::Vector2u size)
{
    if (picture_.getSize() != size) {
        is_usable_ = picture_.create(size.x, size.y);
        known_.clear();
    }
    return is_usable_;
}

bool PanelCache::refresh(const PanelPicture& panel)
{
    const std::uint64_t hash = hash_of(panel);
    const auto known = std::find_if(known_.begin(), known_.end(),
                                    [&](const Known& k) { return k.id == panel.id; });
    if (known != known_.end() && known->hash == hash) {
        return false;
    }
    if (known != known_.end()) {
        known->hash = hash;
        known->box = panel.box;
    } else {
        known_.push_back({panel.id, panel.box, hash});
    }
    // Where another panel has painted over the picture it must be drawn anew when its turn comes.
    std::erase_if(known_,
                  [&](const Known& k) { return k.id != panel.id && k.box.intersects(panel.box); });
    picture_.setActive(true);
    settle_state(picture_);
    draw_lists(panel.lists, picture_.getSize());
    return true;
}

int PanelCache::draw(sf::RenderWindow& window, std::span<const PanelPicture> panels)
{
    if (panels.empty()) {
        return 0;
    }
    if (!make_room(window.getSize())) {
        window.setActive(true);
        settle_state(window);
        for (const PanelPicture& panel : panels) {
            draw_lists(panel.lists, window.getSize());
        }
        window.resetGLStates();
        return static_cast<int>(panels.size());
    }
    int redrawn = 0;
    for (const PanelPicture& panel : panels) {
        redrawn += refresh(panel) ? 1 : 0;
    }
    if (redrawn > 0) {
        picture_.display();
    }
    window.setActive(true);
    window.resetGLStates();
    const sf::View view = window.getView();
    window.setView(sf::View(sf::FloatRect({}, sf::Vector2f(window.getSize()))));
    sf::Sprite sprite(picture_.getTexture());
    for (const PanelPicture& panel : panels) {
        const sf::IntRect box(panel.box);
        sprite.setTextureRect(box);
        sprite.setPosition(static_cast<float>(box.left), static_cast<float>(box.top));
        window.draw(sprite, sf::BlendNone); // opaque, and far cheaper than blending
    }
    window.setView(view);
    return redrawn;
}

} // namespace scenes
