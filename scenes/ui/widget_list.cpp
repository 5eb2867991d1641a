#include "scenes/ui/widget_list.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cerrno>
#include <fstream>
#include <system_error>

namespace scenes {
namespace {

nlohmann::ordered_json to_json(const Widget& widget)
{
    return {{"name", widget.name},
            {"role", widget.role},
            {"value", widget.value},
            {"panel", widget.panel},
            {"box", {widget.box.left, widget.box.top, widget.box.width, widget.box.height}},
            {"enabled", widget.is_enabled},
            {"focused", widget.is_focused},
            {"visible", widget.is_visible},
            {"fits", widget.fits}};
}

} // namespace

const Widget* WidgetList::find(std::string_view name, std::string_view panel) const
{
    const auto found = std::find_if(widgets_.begin(), widgets_.end(), [&](const Widget& widget) {
        return widget.name == name && (panel.empty() || widget.panel == panel);
    });
    return found == widgets_.end() ? nullptr : &*found;
}

void WidgetList::save(const std::filesystem::path& file) const
{
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (const Widget& widget : widgets_) {
        list.push_back(to_json(widget));
    }
    std::filesystem::path part = file;
    part += ".part";
    {
        std::ofstream out(part, std::ios::binary);
        out << list.dump(1, ' ', false, nlohmann::ordered_json::error_handler_t::replace) << '\n';
        if (!out.flush()) {
            throw std::system_error(errno, std::generic_category(),
                                    "cannot write " + part.string());
        }
    }
    std::filesystem::rename(part, file);
}

} // namespace scenes
