#include "scenes/ui/tab_order.hpp"

#include <algorithm>
#include <iterator>

namespace scenes {

void TabOrder::begin_frame()
{
    int layer = 0;
    for (const Stop& stop : coming_) {
        layer = std::max(layer, stop.layer);
    }
    stops_.clear();
    std::copy_if(coming_.begin(), coming_.end(), std::back_inserter(stops_),
                 [layer](const Stop& stop) { return stop.layer == layer; });
    coming_.clear();
    has_moved_ = false;
    follow_layers(layer);
    if (focus_ == 0) {
        return;
    }
    const std::size_t index = index_of(focus_);
    if (index < stops_.size()) {
        last_index_ = index;
    } else {
        // The focused widget is gone or got disabled: its neighbour takes over.
        focus_ = stops_.empty() ? 0 : stops_[std::min(last_index_, stops_.size() - 1)].widget;
    }
}

void TabOrder::follow_layers(int layer)
{
    while (left_.size() < static_cast<std::size_t>(layer)) {
        left_.push_back(focus_);
        focus_ = stops_.empty() ? 0 : stops_.front().widget;
        has_moved_ = true;
    }
    while (left_.size() > static_cast<std::size_t>(layer)) {
        focus_ = left_.back();
        left_.pop_back();
        has_moved_ = true;
    }
}

void TabOrder::add(Id widget, Id panel, int layer)
{
    coming_.push_back({widget, panel, layer});
}

std::size_t TabOrder::index_of(Id widget) const
{
    const auto found = std::find_if(stops_.begin(), stops_.end(),
                                    [widget](const Stop& stop) { return stop.widget == widget; });
    return static_cast<std::size_t>(found - stops_.begin());
}

void TabOrder::go_to(Id widget)
{
    focus_ = widget;
    shows_ring_ = true;
    has_moved_ = true;
}

void TabOrder::move(int step)
{
    if (stops_.empty()) {
        return;
    }
    const std::size_t count = stops_.size();
    const std::size_t here = index_of(focus_);
    if (here == count) {
        go_to((step > 0 ? stops_.front() : stops_.back()).widget);
    } else {
        go_to(stops_[(here + (step > 0 ? 1 : count - 1)) % count].widget);
    }
}

void TabOrder::move_to_next_panel()
{
    const std::size_t count = stops_.size();
    const std::size_t here = index_of(focus_);
    if (here == count) {
        move(1);
        return;
    }
    for (std::size_t step = 1; step < count; ++step) {
        const std::size_t next = (here + step) % count;
        const std::size_t before = (next + count - 1) % count;
        if (stops_[next].panel != stops_[before].panel) {
            go_to(stops_[next].widget);
            return;
        }
    }
}

void TabOrder::point_at(Id widget)
{
    focus_ = widget;
    shows_ring_ = false;
}

} // namespace scenes
